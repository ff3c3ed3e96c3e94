package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var fuseMade = Rule{Name: "fuse-made", judge: judgeFuseMade}

var fuseMadeManual = Manual{
	Rule:  "fuse-made",
	Title: "A fuse is of a rating in which its type is made",
	Why: `Types C, E and F are those of ISO 8820-3. A short that drives more than the
type can break is warned of.`,
	Good: lampCircuit,
	Mistake: []string{
		`  F1: {rating: 5 A}
`,
		`  F1: {rating: 6 A}
`,
	},
}

// judgeFuseMade judges a fuse by what its type is made in, and by the current
// that a short can drive through it.
func judgeFuseMade(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Parts {
		if e, ok := n.Parts[i].(*circuit.Fuse); ok && !e.IsMade() {
			list := ""
			for k, r := range e.Ratings() {
				if k > 0 {
					list += " "
				}
				list += calc.Format(r, 4)
			}
			say(Judgment{Verdict: calc.Stop, Part: i, Message: "type " + e.Type + " is not made for " + format.Amps(e.Rating),
				Do: "take one of " + list + " A, or another type"})
		}
	}
	for i := range s.Shorts {
		short := &s.Shorts[i]
		if short.Fuse < 0 {
			continue
		}
		if e := n.Parts[short.Fuse].(*circuit.Fuse); calc.Over(short.Amps, e.Breaks()) {
			say(Judgment{Verdict: calc.Check, Part: short.Fuse,
				Message: "a short at " + n.Name(short.Wire) + " drives " + format.Amps(short.Amps) + ", and type " + e.Type + " breaks at most " + format.Amps(e.Breaks()),
				Do:      "put a bolt-down fuse that breaks more at the source"})
		}
	}
}
