package circuit

import (
	"math"
	"strings"
	"testing"
)

// textbook are circuits worked by hand.
var textbook = []struct {
	circuit, source string
	volts           map[string]float64 // at a splice
}{
	{"ladder", "series-parallel reduction from the far end, 10 ohm seen and 1 A drawn; the standard method of circuit textbooks",
		map[string]float64{"A": 5, "B": 2.5, "C": 1.5}},
	{"bridge", "Kirchhoff's current law at A and B: 23A − 3B = 150 and 19B − 4A = 100 (worked by hand)",
		map[string]float64{"A": 126.0 / 17, "B": 116.0 / 17}},
	{"bridge-balanced", "Wheatstone's condition R1/R3 = R2/R4: no current in the meter",
		map[string]float64{"A": 7.2, "B": 7.2}},
	{"cube", "5R/6 between opposite corners of a cube of equal resistors, a classical result by symmetry",
		map[string]float64{"A": 3, "B": 3, "C": 3, "D": 2, "F": 2, "G": 2}},
}

func TestTextbook(t *testing.T) {
	all := circuits(t)
	for _, w := range textbook {
		n := build(t, all[w.circuit])
		sol := n.Solve(0)
		for name, want := range w.volts {
			// Each part has at least a microhm, the source among them.
			if got := sol.Volts[n.Element(name).Pins[0].Node]; math.Abs(got-want) > 5e-6 {
				t.Errorf("%s: %s is at %.9f V, want %.9f V (%s)", w.circuit, name, got, want, w.source)
			}
		}
	}
}

// TestAdiabatic compares k with the table of IEC 60364-4-43 and IEC
// 60364-5-54, and with the same equation at the temperatures of vehicle
// insulation.
func TestAdiabatic(t *testing.T) {
	for _, w := range []struct {
		insulation float64
		conductor  string
		k          float64
	}{
		{70, "copper", 115}, {70, "aluminium", 76}, // PVC, 70 to 160 °C
		{105, "copper", 87.6}, {125, "copper", 123.5}, // computed from annex A
	} {
		e := &Element{Insulation: w.insulation, Conductor: w.conductor}
		if got := heatFactor(e) / 1e6; math.Abs(got-w.k) > 0.005*w.k {
			t.Errorf("k of %s at %v C is %.1f, want %.1f", w.conductor, w.insulation, got, w.k)
		}
	}
	// 2.5 mm2 of copper with k 115 bears 500 A for 0.331 s (IEC 60364-4-43 434.5.2).
	e := &Element{Insulation: 70, Conductor: "copper", Area: 2.5e-6}
	if got := withstands(e) / (500 * 500); math.Abs(got-0.331) > 0.002 {
		t.Errorf("2.5 mm2 bears 500 A for %.3f s, want 0.331 s", got)
	}
}

// TestOpeningTimes reads the limits of ISO 8820-3 for types C and F, and of
// typical sheets for type E (both from memory), at their own points.
func TestOpeningTimes(t *testing.T) {
	for _, w := range []struct {
		kind              string
		times             float64
		fastest, slowest_ float64
	}{
		{"C", 1.35, 0.75, 1800}, {"C", 1.6, 0.25, 50}, {"C", 2, 0.15, 5}, {"C", 3.5, 0.04, 0.5}, {"C", 6, 0.02, 0.1},
		{"F", 2, 0.15, 5}, {"E", 1.35, 60, 1800}, {"E", 2, 2, 50}, {"E", 3.5, 0.2, 7}, {"E", 6, 0.04, 1},
	} {
		e := &Element{Kind: Fuse, Type: w.kind, Rating: 30}
		if got := FastestOpening(e, 30*w.times); math.Abs(got-w.fastest) > 1e-9 {
			t.Errorf("type %s at %v times: fastest %v s, want %v s", w.kind, w.times, got, w.fastest)
		}
		if got := SlowestOpening(e, 30*w.times); math.Abs(got-w.slowest_) > 1e-9 {
			t.Errorf("type %s at %v times: slowest %v s, want %v s", w.kind, w.times, got, w.slowest_)
		}
	}
	e := &Element{Kind: Fuse, Type: "C", Rating: 10}
	if !math.IsInf(SlowestOpening(e, 11), 1) || FastestOpening(e, 11) < 360000-1e-6 {
		t.Error("a fuse may open at 110 % of its rating within 100 h")
	}
}

// TestMostPower knows that a source gives the most power at half its voltage
// (maximum power transfer, any circuit textbook): just under it there is a
// solution, just over it none.
func TestMostPower(t *testing.T) {
	const text = `
sources: {E: {volts: 12, internal: 1 ohm, standing: 0}}
loads: {L: {power: %, from: E+, to: E-}}
`
	for _, w := range []struct {
		power   string
		starved bool
	}{{"35.9", false}, {"36.1", true}} {
		n := build(t, strings.Replace(text, "%", w.power, 1))
		sol := n.Solve(0)
		if !sol.Settled || (len(sol.Starved) > 0) != w.starved {
			t.Errorf("%s W from 12 V behind 1 ohm: settled %v, starved %v", w.power, sol.Settled, sol.Starved)
		}
	}
}
