package judge

import (
	"strings"
	"testing"

	"baybook/calculators/circuit/circuittest"
)

// TestSourceLimit: 5 V on 1.5 ohm would be 3.3 A, more than the 3 A of the
// converter, which then holds 3 A on 1.5 ohm and its wires, 4.56 V.
func TestSourceLimit(t *testing.T) {
	if got := said(Assess(circuittest.Build(t, sourceLimitManual.Good))); len(got) > 0 {
		t.Errorf("the good circuit is judged: %v", got)
	}
	got := Assess(circuittest.Build(t, sourceLimitManual.Bad()))
	for i := range got.Judgments {
		if j := &got.Judgments[i]; j.Rule == "source-limit" && strings.Contains(j.Message, "4.56 V of 5 V") {
			return
		}
	}
	t.Errorf("no limit of U1: %v", said(got))
}
