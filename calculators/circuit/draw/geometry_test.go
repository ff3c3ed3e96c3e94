package draw

import (
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/judge"
	"fmt"
	"math"
	"testing"

	"baybook/calculators/circuit"
)

// TestNothingOverlaps checks the geometry of every test drawing, in every
// state and for a phone and a sheet of paper: no symbol or lettering stands
// over another, no line runs through either, and no two lines cross.
func TestNothingOverlaps(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		s := judge.Assess(circuittest.Build(t, text))
		for _, state := range s.Network.States {
			for _, width := range []float64{0, 400, 700, 1250} {
				k := drawn(s, View{State: state.Name, Width: width})
				for _, fault := range k.overlaps() {
					t.Errorf("%s, %s, width %v: %s", name, state.Name, width, fault)
				}
			}
		}
		if k := drawn(s, View{}); k.d.Width > PhoneWidth {
			t.Errorf("%s is %.0f wide, more than a phone", name, k.d.Width)
		}
	}
}

// overlaps lists what stands over what.
func (k *sketch) overlaps() []string {
	var faults []string
	all := append(append([]area(nil), k.symbols...), k.letters...)
	for i, a := range all {
		if a.left < 0 || a.right > k.d.Width+0.5 || a.top < 0 || a.foot > k.d.Height {
			faults = append(faults, fmt.Sprintf("%q leaves the drawing", a.text))
		}
		for _, b := range all[i+1:] {
			const edge = 0.3
			if a.left+edge < b.right && b.left+edge < a.right && a.top+edge < b.foot && b.top+edge < a.foot {
				faults = append(faults, fmt.Sprintf("%q at %.0f, %.0f and %q at %.0f, %.0f", a.text, a.left, a.top, b.text, b.left, b.top))
			}
		}
		for _, l := range k.lines {
			const edge = 0.6
			if math.Min(l.from.X, l.to.X) < a.right-edge && math.Max(l.from.X, l.to.X) > a.left+edge &&
				math.Min(l.from.Y, l.to.Y) < a.foot-edge && math.Max(l.from.Y, l.to.Y) > a.top+edge {
				faults = append(faults, fmt.Sprintf("a line %v through %q at %.0f, %.0f", l.segment, a.text, a.left, a.top))
			}
		}
	}
	for i, a := range k.lines {
		for _, b := range k.lines[i+1:] {
			if a.crosses(b.segment) {
				faults = append(faults, fmt.Sprintf("lines %v and %v cross", a.segment, b.segment))
			}
		}
	}
	return faults
}

// crosses reports whether a level and an upright line cut each other's inside.
func (s segment) crosses(o segment) bool {
	if s.from.X == s.to.X {
		s, o = o, s
	}
	if s.from.Y != s.to.Y || o.from.X != o.to.X || s.from.X == s.to.X {
		return false
	}
	const edge = 0.3
	x, y := o.from.X, s.from.Y
	return x > math.Min(s.from.X, s.to.X)+edge && x < math.Max(s.from.X, s.to.X)-edge &&
		y > math.Min(o.from.Y, o.to.Y)+edge && y < math.Max(o.from.Y, o.to.Y)-edge
}

// TestEveryPartIsDrawn wants the drawing to hold every part by name.
func TestEveryPartIsDrawn(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		s := judge.Assess(circuittest.Build(t, text))
		both := [][]*sketch{{drawn(s, View{})}, sheets(s, View{})}
		for _, list := range both {
			everyPart(t, name, s, list)
		}
	}
}

func everyPart(t *testing.T, name string, s *judge.Assessment, list []*sketch) {
	t.Helper()
	seen := make(map[string]bool)
	for _, k := range list {
		for _, a := range append(append([]area(nil), k.symbols...), k.letters...) {
			if a.it == nil {
				continue
			}
			if a.it.branch >= 0 {
				seen[k.p.part(a.it.branch).Basics().Name] = true
			}
			if a.it.kind == jointItem {
				for i := range s.Network.Parts {
					if e := s.Network.Parts[i].Basics(); e.Kind == circuit.SpliceKind && e.Pins[0].Node == a.it.node {
						seen[e.Name] = true
					}
				}
			}
		}
	}
	for _, p := range s.Network.Parts {
		e := p.Basics()
		if e.Kind != circuit.BodyKind && e.Kind != circuit.LinkKind && !seen[e.Name] {
			t.Errorf("%s: %s %s is not drawn", name, e.Word(), e.Name)
		}
	}
}
