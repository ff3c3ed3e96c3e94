package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var reversed = Rule{Name: "reversed", judge: judgeReversed}

var reversedManual = Manual{
	Rule:  "reversed",
	Title: "No load is connected the wrong way round",
	Why:   `A lamp does not mind; a camera or an amplifier dies of it.`,
	Good: `sources:
  battery: {volts: 12.6, internal: 8 mohm}
fuses:
  F1: {rating: 5 A}
loads:
  lamp: {current: 2 A, type: device}
grounds:
  G0: {point: tray}
  G1: {point: roof}
wires:
  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
  W4: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
`,
	Mistake: []string{
		`  W2: {from: F1, to: lamp, size: 16 AWG, length: 4 m, colour: RD}
  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
		`  W2: {from: F1, to: lamp-, size: 16 AWG, length: 4 m, colour: RD}
  W3: {from: lamp+, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
	},
}

// judgeReversed finds loads whose voltage is below zero.
func judgeReversed(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for state, sol := range s.Solutions {
		if !sol.Solved() {
			continue
		}
		for i := range n.Branches {
			b := &n.Branches[i]
			if e := n.Of(b).Basics(); n.Draws(b) && !turnable(n.Of(b)) && sol.Flows[i].Drop < -0.01*n.Supply().Volts {
				say(Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name,
					Message: e.Name + " has " + format.Volts(sol.Flows[i].Drop) + " in the state " + n.States[state].Name + ": it is connected the wrong way round",
					Do:      "exchange its two wires"})
			}
		}
	}
}

// turnable reports whether a load works either way round.
func turnable(p circuit.Part) bool {
	load, ok := p.(*circuit.Load)
	return ok && (load.Type == "heater" || load.Type == "lamp" || load.Type == "motor")
}
