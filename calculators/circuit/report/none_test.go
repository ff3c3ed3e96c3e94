package report

import (
	"bytes"
	"strings"
	"testing"

	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/judge"
)

// TestNoSolutionNoFigures: where 12 V behind 1 ohm are to give 90 W there is
// nothing to show but that, and that 36 W is the most (maximum power transfer).
func TestNoSolutionNoFigures(t *testing.T) {
	a := judge.Assess(circuittest.Build(t, `
sources: {E: {volts: 12, internal: 1 ohm, standing: 0}}
fuses: {F: {rating: 10 A, resistance: 0, from: E+}}
loads: {L: {power: 90, from: F, to: E-}}
`))
	text := string(AppendText(nil, a))
	if strings.Contains(text, "What flows") || !strings.Contains(text, "at most 36 W can be had there") {
		t.Errorf("said of a circuit without a solution:\n%s", text)
	}
	if svg := draw.Drawing(a, draw.View{}).AppendSVG(nil); bytes.Contains(svg, []byte(" V<")) || !bytes.Contains(svg, []byte("–<")) {
		t.Errorf("drawn of it: %s", svg)
	}
	if json := AppendJSON(nil, a); bytes.Contains(json, []byte(`"amps":8`)) || bytes.Contains(json, []byte("drop_volts")) {
		t.Errorf("written of it: %s", json)
	}
}
