package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var sourceLimit = Rule{Name: "source-limit", judge: judgeSourceLimit}

var sourceLimitManual = Manual{
	Rule:  "source-limit",
	Title: "A converter gives no more than it is made for",
	Why: `At its rated current a converter lets its voltage fall, shuts off or burns.
What hangs on it in a state draws less than that.`,
	Good: `sources:
  battery: {volts: 12.6, internal: 8 mohm}
fuses:
  F1: {rating: 5 A, from: battery+}
converters:
  U1: {volts: 5 V, current: 3 A}
loads:
  tablet: {current: 2 A}
wires:
  W1: {from: F1, to: U1, size: 16 AWG, length: 1 m, colour: RD}
  W2: {from: U1.out+, to: tablet, size: 18 AWG, length: 50 cm, colour: OG}
  W3: {from: tablet, to: U1.out-, size: 18 AWG, length: 50 cm, colour: BK}
  W4: {from: U1-, to: battery-, size: 16 AWG, length: 1 m, colour: BK}
`,
	Mistake: []string{
		`  tablet: {current: 2 A}
`,
		`  tablet: {ohms: 1.5}
`,
	},
}

// judgeSourceLimit finds converters that are at the end of what they give.
func judgeSourceLimit(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for state, sol := range s.Solutions {
		for i := range n.Branches {
			b := &n.Branches[i]
			if b.Role != circuit.Converted || !sol.Solved() || !calc.Over(sol.Flows[i].Current, 0.9999*b.Amps) {
				continue
			}
			say(Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name,
				Message: n.NameOf(b) + " gives all of its " + format.Amps(b.Amps) + " in the state " + n.States[state].Name + " and holds " + format.Volts(-sol.Flows[i].Drop) + " of " + format.Volts(b.Volts),
				Do:      "take a larger converter, or take a load off it"})
		}
	}
}
