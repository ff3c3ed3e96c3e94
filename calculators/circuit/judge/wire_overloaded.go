package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var wireOverloaded = Rule{Name: "wire-overloaded", judge: judgeOverloaded}

var wireOverloadedManual = Manual{
	Rule:  "wire-overloaded",
	Title: "No wire carries more in any state than it may for good",
	Why: `A ground wire has no fuse of its own, and carries what all the loads on it
draw.`,
	Good: lampCircuit,
	Mistake: []string{
		`  F1: {rating: 5 A}
`,
		`  F1: {rating: 15 A}
`,
		`  lamp: {current: 2 A, type: lamp}
`,
		`  lamp: {current: 12 A, type: lamp}
`,
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
		`  W2: {from: F1, to: lamp, size: 10 AWG, length: 4 m, colour: RD}
  W3: {from: lamp, to: G1, size: 24 AWG, length: 30 cm, colour: BK}
`,
	},
}

// judgeOverloaded compares the current of every state with what the wire may
// carry.
func judgeOverloaded(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e, ok := n.Of(b).(*circuit.Wire)
		if !ok || e.Vehicle {
			continue
		}
		carries, state := s.Peak(i)
		if limit := n.Ampacity(e); calc.Over(carries, limit) {
			do := "divide the load"
			if size := n.SizeFor(e, carries); size != "" {
				do = "the smallest size that carries it is " + size
			}
			say(Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name, Do: do,
				Message: e.Name + " carries " + format.Amps(carries) + " in the state " + n.States[state].Name + ", and may carry " + format.Amps(limit)})
		}
	}
}
