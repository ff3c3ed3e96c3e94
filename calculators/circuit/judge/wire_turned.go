package judge

import (
	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/solve"
)

var wireTurned = Rule{Name: "wire-turned", judge: judgeWireTurned}

var wireTurnedManual = Manual{
	Rule:  "wire-turned",
	Title: "A wire is written in the direction that its current takes",
	Why: `The name of a part alone means the side that the direction says: to: lamp is
lamp+, from: lamp is lamp-. A wire that is written the other way round lands on
the wrong terminal, and a load is turned or a source shorted by it.`,
	Good: lampCircuit,
	Mistake: []string{
		`  W3: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
`,
		`  W3: {from: G1, to: lamp, size: 16 AWG, length: 30 cm, colour: BK}
`,
	},
}

// judgeWireTurned finds wires that name a load alone and that lie on its feed
// where they should be its return, or the other way.
func judgeWireTurned(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		w, ok := n.Of(b).(*circuit.Wire)
		if !ok {
			continue
		}
		switch {
		case isBareLoad(n, w.From) && joinsSide(s, n.Plus(), n.Minus(), i, b.To):
			say(turnedWire(b.Part, w.Name+" leaves "+w.From+"- and leads to a feed: turned round?", w))
		case isBareLoad(n, w.To) && joinsSide(s, n.Minus(), n.Plus(), i, b.From):
			say(turnedWire(b.Part, w.Name+" enters "+w.To+"+ and comes from a return: turned round?", w))
		}
	}
}

func turnedWire(part int, message string, w *circuit.Wire) Judgment {
	return Judgment{Verdict: calc.Stop, Part: part, Message: message,
		Do: "write " + w.Name + ": {from: " + w.To + ", to: " + w.From + "}, or name the terminal that you mean"}
}

// isBareLoad reports whether an end names a load and not its terminal.
func isBareLoad(n *circuit.Network, end string) bool {
	p := n.Part(end)
	return p != nil && circuit.DemandOf(p) != nil
}

// joinsSide reports whether metal joins a node with one side of the sources
// and not with the other when a branch is taken out and all contacts are
// closed.
func joinsSide(s *solve.Study, side, other []int, without, node int) bool {
	metal := func(k int) bool { return k != without && s.Graph.Metal(k) }
	return s.Graph.Reach(side, metal)[node] && !s.Graph.Reach(other, metal)[node]
}
