package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit/solve"
)

var liveBehind = Rule{Name: "live-behind", judge: judgeLiveBehind}

var liveBehindManual = Manual{
	Rule:  "live-behind",
	Warns: true,
	Title: "What is behind a fuse is dead when the fuse is out",
	Why: `With two feeds to one wire, pulling one fuse leaves the wire live. Somebody
will put a tool to it. Say so on the label, or feed it once.`,
	Good: `sources:
  battery: {volts: 12.6, internal: 8 mohm}
fuses:
  F1: {rating: 10 A, from: battery+}
splices: [S1]
loads:
  lamp: {current: 4 A, type: lamp}
wires:
  W1: {from: F1, to: S1, size: 12 AWG, length: 3 m, colour: RD}
  W3: {from: S1, to: lamp, size: 12 AWG, length: 1 m, colour: RD}
  W4: {from: lamp, to: battery-, size: 12 AWG, length: 3 m, colour: BK}
`,
	Mistake: []string{
		`  F1: {rating: 10 A, from: battery+}
`,
		`  F1: {rating: 10 A, from: battery+}
  F2: {rating: 10 A, from: battery+}
`,
		`  W1: {from: F1, to: S1, size: 12 AWG, length: 3 m, colour: RD}
`,
		`  W1: {from: F1, to: S1, size: 12 AWG, length: 3 m, colour: RD}
  W2: {from: F2, to: S1, size: 12 AWG, length: 3 m, colour: RD}
`,
	},
}

// judgeLiveBehind says which fuses do not make dead what is behind them.
func judgeLiveBehind(s *solve.Study, say func(Judgment)) {
	for _, b := range s.Blown {
		if len(b.Live) > 0 {
			e := s.Network.Parts[b.Fuse].Basics()
			say(Judgment{Verdict: calc.Check, Part: b.Fuse,
				Message: "with " + e.Name + " out, what is behind it stays live through " + s.Network.Names(b.Live),
				Do:      "say so on the fuse label, and pull both before work"})
		}
	}
}
