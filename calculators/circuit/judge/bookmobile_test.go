package judge

import (
	"testing"

	"baybook/calculators/circuit/circuittest"
)

// TestBookmobile holds the numbers that the bookmobile's job sheet says of its
// circuit: 8 mA added to 28 mA on 95 Ah leave half of it after 49.6 d.
func TestBookmobile(t *testing.T) {
	s := Assess(circuittest.Build(t, circuittest.Circuits(t)["bookmobile"]))
	if list := said(s); len(list) > 0 {
		t.Errorf("judged: %v", list)
	}
	if days := s.Standby.Days; days < 49.55 || days > 49.65 {
		t.Errorf("lasts %v d, want 49.6 d", days)
	}
}
