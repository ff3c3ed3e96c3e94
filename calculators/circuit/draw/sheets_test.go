package draw

import (
	"fmt"
	"math"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/judge"
)

// TestSheets checks every test circuit as a wiring diagram, in every state: no
// lettering or symbol over another, no line through either, no two lines that
// cross, no end in the air, a dot at every T and nowhere else.
func TestSheets(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		a := judge.Assess(circuittest.Build(t, text))
		for _, state := range a.Network.States {
			for i, k := range sheets(a, View{State: state.Name, Block: TitleBlock{Title: name, Number: "WI-01", Revision: "C"}}) {
				for _, fault := range append(k.overlaps(), append(k.crossings(), k.looseEnds()...)...) {
					t.Errorf("%s, %s, sheet %d: %s", name, state.Name, i+1, fault)
				}
				if k.d.Width > SheetWidth {
					t.Errorf("%s, sheet %d is %.0f wide", name, i+1, k.d.Width)
				}
			}
		}
	}
}

// crossings lists the wires that cross a line or go through lettering or the
// symbol of another part.
func (k *sketch) crossings() []string {
	var faults []string
	for _, w := range k.wires {
		for _, l := range k.lines {
			if w.crosses(l.segment) {
				faults = append(faults, fmt.Sprintf("wire %v and line %v cross", w.segment, l.segment))
			}
		}
	}
	return faults
}

// looseEnds lists the ends of lines and wires on which nothing stands, and the
// dots that are missing or too many: a bar of n tracks has as many dots as it
// has tracks that meet it within.
func (k *sketch) looseEnds() []string {
	var faults []string
	all := append(append([]track(nil), k.lines...), k.wires...)
	for i, l := range all {
		for _, p := range [...]calc.Point{l.from, l.to} {
			if !k.joined(all, i, p) {
				faults = append(faults, fmt.Sprintf("the end at %.1f, %.1f is in the air", p.X, p.Y))
			}
			if arms := k.arms(p); k.dotted(p) != (arms >= 3) && math.Abs(p.Y-k.foot) > near {
				faults = append(faults, fmt.Sprintf("%d lines meet at %.1f, %.1f; a dot there: %v", arms, p.X, p.Y, k.dotted(p)))
			}
		}
	}
	for _, d := range k.dots {
		if k.arms(d) < 3 {
			faults = append(faults, fmt.Sprintf("a dot at %.1f, %.1f where no three lines meet", d.X, d.Y))
		}
	}
	return faults
}

// joined reports that something else stands at the end of a line: another
// line, a symbol, the ground rail, or the edge where a sheet ends.
func (k *sketch) joined(all []track, but int, p calc.Point) bool {
	for i, l := range all {
		if i != but && l.holds(p) {
			return true
		}
	}
	for _, s := range k.stubs {
		if s.endsAt(p) {
			return true
		}
	}
	return math.Abs(p.Y-k.foot) < near || k.goesOnAt(p)
}

// goesOnAt reports the mark with which a line goes on on the next sheet.
func (k *sketch) goesOnAt(p calc.Point) bool {
	for _, m := range k.marks {
		if same(m, p) {
			return true
		}
	}
	return false
}
