package judge

import (
	"math"

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
		judgeHeated(s, i, e, say)
	}
}

// judgeHeated judges a wire in the states that last for a time only: by the
// heat that it withstands without losing any (IEC 60364-4-43).
func judgeHeated(s *solve.Study, i int, w *circuit.Wire, say func(Judgment)) {
	n := s.Network
	for state := range n.States {
		lasts := n.States[state].Lasts
		carries := math.Abs(s.Solutions[state].Flows[i].Current)
		if lasts == 0 || s.Unusable[state] || !calc.Over(carries, n.Ampacity(w)) {
			continue
		}
		if bears := w.Withstands() / (carries * carries); calc.Over(lasts, bears) {
			say(Judgment{Verdict: calc.Stop, Part: n.Branches[i].Part, State: n.States[state].Name, Do: "use a thicker wire, or make the state shorter",
				Message: w.Name + " carries " + format.Amps(carries) + " for " + format.Seconds(lasts) + " in the state " + n.States[state].Name + ", and bears that for " + format.Seconds(bears)})
		}
	}
}
