package solve

import (
	"baybook/calculators/circuit/circuittest"
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
	all := circuittest.Circuits(t)
	for _, w := range textbook {
		n := circuittest.Build(t, all[w.circuit])
		sol := State(n, 0)
		for name, want := range w.volts {
			if got := sol.Volts[n.Part(name).Basics().Pins[0].Node]; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s: %s is at %.9f V, want %.9f V (%s)", w.circuit, name, got, want, w.source)
			}
		}
	}
}

// TestMostPower checks that a source gives the most power at half its voltage
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
		n := circuittest.Build(t, strings.Replace(text, "%", w.power, 1))
		sol := State(n, 0)
		if !sol.Settled || (len(sol.Undervolted) > 0) != w.starved {
			t.Errorf("%s W from 12 V behind 1 ohm: settled %v, starved %v", w.power, sol.Settled, sol.Undervolted)
		}
	}
}
