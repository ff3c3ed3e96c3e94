package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var wireBurns = Rule{Name: "wire-burns", judge: judgeBurns}

var wireBurnsManual = Manual{
	Rule:  "wire-burns",
	Firm:  true,
	Title: "A dead short at the far end opens a fuse before the wire burns",
	Why: `The short-circuit current is computed through every resistance on the way, the
fuse is taken at its slowest, and the wire bears k²S² (IEC 60364-4-43).`,
	Good: lampCircuit,
	Mistake: []string{
		`  F1: {rating: 5 A}
`,
		`  F1: {rating: 40 A, type: E}
`,
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
`,
		`  W2: {from: F1, to: lamp, size: 22 AWG, length: 4 m, colour: RD}
`,
	},
}

// judgeBurns judges what a short does to each wire.
func judgeBurns(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range s.Shorts {
		short := &s.Shorts[i]
		if short.Survives || hasNoFuse(s, short.Wire) {
			continue // a wire that has no fuse before it is judged by its length
		}
		e := n.Parts[short.Wire].(*circuit.Wire)
		j := Judgment{Verdict: calc.Stop, Part: short.Wire, Do: "put a smaller fuse before it, or take a thicker wire"}
		j.Message = "a short at the far end of " + e.Name + " drives " + format.Amps(short.Amps) + "; the fuse may take " + format.Seconds(short.Opens) + ", and the wire bears it for " + format.Seconds(short.Bears)
		if math.IsInf(short.Opens, 1) {
			j.Message = "a short at the far end of " + e.Name + " drives " + format.Amps(short.Amps) + " through it for good: what fuses there are need not open, and the wire may carry " + format.Amps(n.Ampacity(e))
		}
		say(j)
	}
}

// hasNoFuse reports whether a source reaches a wire without passing a fuse.
func hasNoFuse(s *solve.Study, wire int) bool {
	e := s.Network.Parts[wire].Basics()
	for _, set := range s.Settings {
		if runs := s.Graph.Runs(set.Open); !math.IsInf(math.Min(runs[e.Pins[0].Node], runs[e.Pins[1].Node]), 1) {
			return true
		}
	}
	return false
}
