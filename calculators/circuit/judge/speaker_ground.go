package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var speakerGround = Rule{Name: "speaker-ground", judge: judgeSpeakerGround}

var speakerGroundManual = Manual{
	Rule:  "speaker-ground",
	Title: "No output of an amplifier touches the ground or the supply",
	Why: `A bridged output, or that of a radio, has no grounded side; joined to one it
dies.`,
	Good: speakerCircuit,
	Mistake: []string{
		`  W4: {from: left, to: amp.1-, size: 16 AWG, length: 3 m, colour: WHBK}
`,
		`  W4: {from: left, to: amp.1-, size: 16 AWG, length: 3 m, colour: WHBK}
  W5: {from: amp.1-, to: battery-, size: 16 AWG, length: 1 m, colour: BK}
`,
	},
}

// judgeSpeakerGround finds outputs that metal joins to the supply.
func judgeSpeakerGround(s *solve.Study, say func(Judgment)) {
	n := s.Network
	supply := s.Graph.Reach(append(n.Plus(), n.Minus()...), s.Graph.Metal)
	for i := range n.Branches {
		b := &n.Branches[i]
		if b.Role == circuit.Output && (supply[b.From] || supply[b.To]) {
			say(Judgment{Verdict: calc.Stop, Part: b.Part, Message: b.Label() + " of " + n.NameOf(b) + " is joined to the ground or the supply",
				Do: "lead both wires of the speaker back to the output, and nowhere else"})
		}
	}
}
