package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
	"baybook/calculators/circuit/solve"
)

var colourTwice = Rule{Name: "colour-twice", judge: judgeColors}

var colourTwiceManual = Manual{
	Rule:  "colour-twice",
	Title: "One colour has one function in a drawing",
	Why: `The next person follows the colour. A wire says its function; what returns to
the source is ground where nothing else is said.`,
	Good: lampCircuit,
	Mistake: []string{
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
`,
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: BK, function: lamp}
`,
	},
}

// judgeColors finds a color with two functions. What returns to the source
// is ground where nothing else is said.
func judgeColors(s *solve.Study, say func(Judgment)) {
	n := s.Network
	var first intset.Set // the wires that have a color first
	function := func(e *circuit.Wire) string {
		if e.Function != "" {
			return e.Function
		}
		if returns(s, e) {
			return "ground"
		}
		return ""
	}
	for i := range n.Parts {
		e, ok := n.Parts[i].(*circuit.Wire)
		if !ok || e.Vehicle || function(e) == "" {
			continue
		}
		var other *circuit.Wire
		for _, k := range first {
			if w := n.Parts[k].(*circuit.Wire); w.Color == e.Color {
				other = w
			}
		}
		switch {
		case other == nil:
			first.Add(i)
		case !calc.SameWord(function(e), function(other)):
			say(Judgment{Verdict: calc.Stop, Part: i,
				Message: e.Color + " is " + function(e) + " in " + e.Name + " and " + function(other) + " in " + other.Name,
				Do:      "give one of them another colour, or a stripe"})
		}
	}
}

// returns reports whether a wire is on the way back to the source in every
// setting.
func returns(s *solve.Study, w *circuit.Wire) bool {
	for _, set := range s.Settings {
		if set.Feed[w.Pins[0].Node] || !set.Return[w.Pins[0].Node] {
			return false
		}
	}
	return true
}
