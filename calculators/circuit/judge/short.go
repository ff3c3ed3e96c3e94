package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit/solve"
)

var short = Rule{Name: "short", judge: judgeShort}

var shortManual = Manual{
	Rule:  "short",
	Firm:  true,
	Title: "No wire joins the two terminals of a source",
	Why: `A wire that leads straight from plus to minus carries hundreds of amperes until
something burns. It is looked for in every named state.`,
	Good: lampCircuit,
	Mistake: []string{
		`  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
		`  W3: {from: lamp+, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
	},
}

// judgeShort finds states in which metal joins the terminals of a source.
func judgeShort(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for _, set := range s.Settings {
		if set.State < 0 {
			continue
		}
		for _, i := range n.SourceBranches() {
			b := &n.Branches[i]
			if s.Graph.Reach([]int{b.To}, func(k int) bool { return !set.Open[k] && s.Graph.Metal(k) })[b.From] {
				say(Judgment{Verdict: calc.Stop, Part: b.Part, State: set.Name,
					Message: "in the state " + set.Name + " " + n.NameOf(b) + "+ is joined to " + n.NameOf(b) + "- with no load between them",
					Do:      "follow the wires from " + n.NameOf(b) + "+ and take the one off that leads straight back"})
			}
		}
	}
}
