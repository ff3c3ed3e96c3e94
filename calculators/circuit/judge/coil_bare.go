package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var coilBare = Rule{Name: "coil-bare", judge: judgeCoilBare}

var coilBareManual = Manual{
	Rule:  "coil-bare",
	Title: "A relay's coil has something across it",
	Why: `A coil that is switched off throws a pulse of tens of volts at whatever
switches it: test pulses reach −75 V to −100 V (ISO 7637-2, from memory).`,
	Good: relayCircuit,
	Mistake: []string{
		`  R1: {coil: 85 ohm, suppression: diode, rating: 20 A}
`,
		`  R1: {coil: 85 ohm, suppression: none, rating: 20 A}
`,
	},
}

// judgeCoilBare finds coils with nothing across them.
func judgeCoilBare(s *solve.Study, say func(Judgment)) {
	for i := range s.Network.Parts {
		if e, ok := s.Network.Parts[i].(*circuit.Relay); ok && e.Suppression == "none" && !e.Vehicle {
			say(Judgment{Verdict: calc.Stop, Part: i, Message: "nothing is across the coil of " + e.Name + "; switched off, it throws a pulse of tens of volts at its trigger",
				Do: "take a relay with a diode or a resistor inside, or fit a diode with its band to 86, and say suppression: diode"})
		}
	}
}
