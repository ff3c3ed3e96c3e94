package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var twoSources = Rule{Name: "two-sources", judge: judgeTwoSources}

var twoSourcesManual = Manual{
	Rule:  "two-sources",
	Title: "Two sources that a state joins have a fuse at each end",
	Why: `The fuller battery feeds the other with all that the wire lets through, and a
short in the wire between them is fed from both ends. With a fuse at each end
what flows and what a short drives is judged by the other rules.`,
	Good: `sources:
  starter: {volts: 12.6, internal: 15 mohm}
  second: {volts: 12.2, internal: 20 mohm}
fuses:
  F1: {rating: 10 A, from: starter+}
  F2: {rating: 15 A, from: second+}
loads:
  lamp: {current: 2 A, type: lamp}
  heater: {current: 8 A, type: heater}
wires:
  W1: {from: F1, to: lamp, size: 12 AWG, length: 2 m, colour: YE}
  W2: {from: F2, to: heater, size: 12 AWG, length: 2 m, colour: OG}
  W3: {from: lamp, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
  W4: {from: heater, to: second-, size: 12 AWG, length: 2 m, colour: BK}
  W5: {from: second-, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
`,
	Mistake: []string{
		`  W5: {from: second-, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
`,
		`  W5: {from: second-, to: starter-, size: 12 AWG, length: 2 m, colour: BK}
  W6: {from: starter+, to: second+, size: 12 AWG, length: 15 cm, colour: RD}
`,
	},
}

// judgeTwoSources finds states in which metal joins two sources and no fuse is
// between them.
func judgeTwoSources(s *solve.Study, say func(Judgment)) {
	n := s.Network
	sources := n.SourceBranches()
	for _, set := range s.Settings {
		if set.State < 0 {
			continue
		}
		metal := func(k int) bool { return !set.Open[k] && s.Graph.Metal(k) }
		for i, a := range sources {
			plus := s.Graph.Reach([]int{n.Branches[a].To}, metal)
			minus := s.Graph.Reach([]int{n.Branches[a].From}, metal)
			for _, b := range sources[i+1:] {
				other := &n.Branches[b]
				if n.Branches[a].Law == circuit.Regulated || other.Law == circuit.Regulated {
					continue // it takes nothing back, and gives no more than it is made for
				}
				if !plus[other.To] || !minus[other.From] {
					continue
				}
				between, _ := s.Graph.MaxFuseCurrentFrom([]int{n.Branches[a].To}, other.To, -1, set.Open)
				if !math.IsInf(between, 1) {
					continue // what the fuses let through is judged by rules of its own
				}
				passes := math.Abs(s.Solutions[set.State].Flows[b].Current)
				say(Judgment{Verdict: calc.Stop, Part: other.Part, State: set.Name,
					Message: n.NameOf(&n.Branches[a]) + " and " + n.NameOf(other) + " are joined in the state " + set.Name + " with no fuse between them; " + format.Amps(passes) + " passes through " + n.NameOf(other),
					Do:      "put a fuse at each end of the wire between them, or a relay or another isolator that is open in this state"})
			}
		}
	}
}
