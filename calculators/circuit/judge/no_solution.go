package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var noSolution = Rule{Name: "no-solution", judge: judgeSolution}

var noSolutionManual = Manual{
	Rule:  "no-solution",
	Title: "Every load can be given what it asks for",
	Why: `A device of constant power draws more the less it gets, and behind a long thin
wire there is no voltage at which it works. A relay that takes its own coil's
supply away finds no rest either.`,
	Good: lampCircuit,
	Mistake: []string{
		`  lamp: {current: 2 A, type: lamp}
`,
		`  inverter: {power: 150 W}
`,
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
		`  W2: {from: F1, to: inverter, size: 22 AWG, length: 6 m, colour: RD}
  W3: {from: inverter, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
	},
}

// judgeSolution says where there is none.
func judgeSolution(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for state, sol := range s.Solutions {
		in := "in the state " + n.States[state].Name + " "
		for _, e := range sol.Oscillating {
			say(Judgment{Verdict: calc.Stop, Part: e, State: n.States[state].Name,
				Message: in + n.Name(e) + " finds no rest: pulled in, it takes its own supply away",
				Do:      "feed its coil from before its own contact"})
		}
		for k, i := range sol.Undervolted {
			b := &n.Branches[i]
			say(Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name,
				Message: in + n.NameOf(b) + " has no solution: the wiring cannot give it what it asks for, and at most " + available(b, sol.Available[k]) + " can be had there",
				Do:      "use a thicker or shorter wire"})
		}
		if !sol.Settled && len(sol.Oscillating) == 0 {
			say(Judgment{Verdict: calc.Stop, Part: -1, State: n.States[state].Name,
				Message: in + "no voltages satisfy every part", Do: "check the loads of constant power and the resistances before them"})
		}
	}
}

// available says what of a load's current or power the wiring can give.
func available(b *circuit.Branch, share float64) string {
	if b.Law == circuit.PowerLoad {
		return format.Watts(share * b.Watts)
	}
	return format.Amps(share * b.Amps)
}
