package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var tapTurned = Rule{Name: "tap-turned", judge: judgeTapTurned}

var tapTurnedManual = Manual{
	Rule:  "tap-turned",
	Title: "A fuse tap takes its current from the feed side of its slot",
	Why: `Turned round, the added load runs through the vehicle's own fuse and can take
the vehicle's circuit down with it. A drawing that shows this mistake on
purpose says wrong: [tap-turned].`,
	Good: tapCircuit,
	Mistake: []string{
		`wrong: [tap-turned]
`,
		"",
	},
}

// judgeTapTurned finds taps on the load side of their slot.
func judgeTapTurned(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Parts {
		e, ok := n.Parts[i].(*circuit.Fuse)
		if !ok || e.Taps == "" {
			continue
		}
		slot := n.Part(e.Taps).(*circuit.Fuse)
		switch {
		case turned(slot, e):
			say(Judgment{Verdict: calc.Stop, Part: i, Message: e.Name + " hangs on the load side of " + slot.Name + ": the added load runs through the vehicle's own fuse and can take its circuit down",
				Do: "turn the tap round, its single leg on the side that is live with the fuse out"})
		case e.Node("in") != slot.Node("in"):
			say(Judgment{Verdict: calc.Stop, Part: i, Message: e.Name + " is said to tap " + slot.Name + " and is not on its slot",
				Do: "take out from:, or write from: " + slot.Name + ".in"})
		}
	}
}

// turned reports whether a tap hangs on the load side of its slot.
func turned(slot, tap *circuit.Fuse) bool { return tap.Node("in") == slot.Node("out") }
