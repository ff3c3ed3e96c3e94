package calc_test

import (
	"testing"

	"baybook/calculators/calc"
)

// lamp is a calculator with an input of every kind, an output of every kind,
// and each of the three verdicts.
var lamp = &calc.Calculator{
	Name: "lamp", Title: "Lamps in a row", Question: "How bright?", Doc: "Lamps.",
	Inputs: []calc.Input{
		{Name: "voltage", Label: "Voltage", Unit: "V", Min: 1, Max: 30, Default: "12", Help: "h"},
		{Name: "current", Label: "Current", Unit: "A", Min: 0, Max: 20, Default: "2", Help: "h"},
		{Name: "lamps", Label: "Lamps", Kind: calc.Count, Min: 1, Max: 10, Default: "1", Help: "h"},
		{Name: "cap", Label: "Cap", Kind: calc.Word, Words: []string{"push", "screw"}, Default: "push", Help: "h"},
		{Name: "wire", Label: "Wire", Kind: calc.Wire, Min: 0.05, Max: 120, Default: "16 AWG", Help: "h"},
		{Name: "fuse", Label: "Fuse", Unit: "A", OneOf: []float64{5, 7.5, 10}, Min: 5, Max: 10, Default: "10", Help: "h"},
		{Name: "marks", Label: "Marks", Kind: calc.Numbers, Unit: "m", Min: 0.1, Max: 20, Most: 3, Default: "0.5,1", Help: "h"},
		{Name: "loom", Label: "Loom", Kind: calc.Bundle, Unit: "mm", Min: 0.3, Max: 60, Most: 8, Default: "2x3", Help: "h"},
		{Name: "air", Label: "Air", Unit: "C", Min: -40, Max: 60, Default: "20", Help: "h"},
	},
	Outputs: []calc.Output{
		{Name: "power", Label: "Power", Unit: "W"},
		{Name: "size", Label: "Size", Unit: "mm2"},
		{Name: "word", Label: "Word", Text: true},
		{Name: "shine", Label: "Shine", Unit: "dB", Places: 2},
	},
	Sources: []calc.Source{{Text: "Ohm's law"}}, Limits: []string{"l"}, Cautions: []string{"It is hot & bright."},
	Run: func(in *calc.Values, out *calc.Result) *calc.Problem {
		power := in.SI("voltage") * in.SI("current") * float64(in.Int("lamps"))
		if in.Word("cap") == "screw" && in.Int("lamps") == 7 {
			return calc.NewProblem("lamps", "seven do not screw")
		}
		out.SetSI("power", power)
		out.SetNamed("size", calc.AWGArea(16), "16 AWG")
		out.SetText("word", "bright")
		if power > 0 {
			out.Set("shine", -1/power)
		} else {
			out.Note("shine is left out: it is dark")
		}
		switch {
		case calc.Over(power, 200):
			out.Stop("{power} is over 200 W")
		case calc.Over(power, 100):
			out.Check("{power:4} of {lamps} lamp(s) is over 100 W, by {1:2 W}", power-100)
		}
		out.Work("{voltage} × {current} = {power:4}")
		return nil
	},
}

// answer computes a query or fails the test.
func answer(t *testing.T, query string) (*calc.Values, *calc.Result) {
	t.Helper()
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		t.Fatal(msg)
	}
	v, r, problems := lamp.Answer(pairs)
	if r == nil {
		t.Fatalf("%s: %v", query, problems[0])
	}
	return v, r
}

// pairsOf splits a query or fails the test.
func pairsOf(t *testing.T, query string) []calc.Pair {
	t.Helper()
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		t.Fatal(msg)
	}
	return pairs
}
