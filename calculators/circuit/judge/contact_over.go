package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var contactOver = Rule{Name: "contact-over", judge: judgeContact}

var contactOverManual = Manual{
	Rule:  "contact-over",
	Title: "A contact carries no more than its rating",
	Why:   `Of a relay, a switch, a diode or a connector, where the drawing gives a rating.`,
	Good:  relayCircuit,
	Mistake: []string{
		`  R1: {coil: 85 ohm, suppression: diode, rating: 20 A}
`,
		`  R1: {coil: 85 ohm, suppression: diode, rating: 5 A}
`,
	},
}

// judgeContact compares contacts with their rating.
func judgeContact(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		rating := contactRating(n, b)
		if rating == 0 {
			continue
		}
		if carries, state := s.Peak(i); calc.Over(carries, rating) {
			say(Judgment{Verdict: calc.Stop, Part: b.Part, State: n.States[state].Name,
				Message: contactName(n, b) + " carries " + format.Amps(carries) + " in the state " + n.States[state].Name + ", more than its " + format.Amps(rating),
				Do:      "take a larger one, or divide the load"})
		}
	}
}

// contactName names a contact: "the way 2 of X1", "K1".
func contactName(n *circuit.Network, b *circuit.Branch) string {
	if b.Label() == "" {
		return n.NameOf(b)
	}
	return "the " + b.Label() + " of " + n.NameOf(b)
}

// contactRating is what a branch's contact may carry in A, 0 where it is no
// contact or nothing is given.
func contactRating(n *circuit.Network, b *circuit.Branch) float64 {
	switch e := n.Of(b).(type) {
	case *circuit.Connector:
		return e.Rating
	case *circuit.Switch:
		return e.Rating
	case *circuit.Diode:
		return e.Rating
	case *circuit.Relay:
		if b.Role != circuit.Coil && b.Role != circuit.CoilDamping {
			return e.Rating
		}
	}
	return 0
}
