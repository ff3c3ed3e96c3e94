package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var coilTurned = Rule{Name: "coil-turned", judge: judgeCoilTurned}

var coilTurnedManual = Manual{
	Rule:  "coil-turned",
	Title: "A coil with a diode across it has its positive side on 86",
	Why:   `The other way round the diode conducts, and shorts the trigger.`,
	Good:  relayCircuit,
	Mistake: []string{
		`  W5: {from: key, to: R1.86, size: 18 AWG, length: 1 m, colour: BUWH}
  W6: {from: R1.85, to: battery-, size: 18 AWG, length: 1 m, colour: BK}
`,
		`  W5: {from: key, to: R1.85, size: 18 AWG, length: 1 m, colour: BUWH}
  W6: {from: R1.86, to: battery-, size: 18 AWG, length: 1 m, colour: BK}
`,
	},
}

// judgeCoilTurned finds coils whose diode conducts.
func judgeCoilTurned(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for state, sol := range s.Solutions {
		if !sol.Solved() {
			continue
		}
		for i := range n.Branches {
			b := &n.Branches[i]
			if b.Role != circuit.Coil {
				continue
			}
			e := n.Of(b).(*circuit.Relay)
			if (e.Suppression == "diode" || e.Suppression == "zener") && sol.Flows[i].Drop < -0.01*n.Supply().Volts {
				say(Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name,
					Message: "85 of " + e.Name + " is positive in the state " + n.States[state].Name + ": its diode shorts the trigger",
					Do:      "exchange 85 and 86"})
			}
		}
	}
}
