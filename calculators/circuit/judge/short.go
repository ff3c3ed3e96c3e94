package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
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
					Message: "in the state " + set.Name + " " + n.NameOf(b) + "+ is joined to " + n.NameOf(b) + "- with no load between them, by way of " + pathOf(s, b, set.Open),
					Do:      "take off the wire of these that leads straight back"})
			}
		}
	}
}

// pathOf lists the parts on a shortest way of metal from a source's positive
// terminal to its negative one.
func pathOf(s *solve.Study, source *circuit.Branch, open []bool) string {
	pass := func(k int) bool { return !open[k] && s.Graph.Metal(k) }
	depth := s.Graph.Hops([]int{source.From}, pass)
	var parts []int
	for node := source.To; depth[node] > 0; {
		for _, k := range s.Graph.At[node] {
			if next := s.Graph.Other(k, node); pass(k) && depth[next] == depth[node]-1 {
				parts = intset.Append(parts, s.Network.Branches[k].Part)
				node = next
				break
			}
		}
	}
	return s.Network.Names(parts)
}
