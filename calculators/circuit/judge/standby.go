package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var standby = Rule{Name: "standby", judge: judgeStandby}

var standbyManual = Manual{
	Rule:  "standby",
	Title: "Parked, the battery lasts for as long as the vehicle stands",
	Why: `It is judged by the calculator standby, with what the parked state draws, the
battery's capacity, and limits: {parked: ...}.`,
	Good: `sources:
  battery: {volts: 12.6, internal: 8 mohm, capacity: 60 Ah}
fuses:
  F1: {rating: 2 A, from: battery+}
loads:
  camera: {current: 300 mA, sleeps: 2 mA}
wires:
  W1: {from: F1, to: camera, size: 18 AWG, length: 3 m, colour: YE}
  W2: {from: camera, to: battery-, size: 18 AWG, length: 3 m, colour: BK}
states:
  key off: {parked: yes}
  key on: {}
limits: {parked: 14 d}
`,
	Mistake: []string{
		`  camera: {current: 300 mA, sleeps: 2 mA}
`,
		`  camera: {current: 300 mA, sleeps: 200 mA}
`,
	},
}

// judgeStandby passes on what the calculator says of the parked state.
func judgeStandby(s *solve.Study, say func(Judgment)) {
	if s.Standby.Verdict == calc.OK {
		return
	}
	for i, reason := range s.Standby.Reasons {
		if i == 0 {
			say(Judgment{Verdict: s.Standby.Verdict, Part: s.Network.First(circuit.SourceKind), State: s.Network.States[s.Standby.State].Name,
				Message: "parked, with " + format.Quantity(s.Standby.Added, "A") + " added, " + reason, Do: "switch more of it off with the key"})
		}
	}
}
