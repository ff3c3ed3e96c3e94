package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var unfused = Rule{Name: "unfused", judge: judgeUnfused}

var unfusedManual = Manual{
	Rule:  "unfused",
	Firm:  true,
	Title: "A wire from the source has a fuse within a hand's length",
	Why: `Nothing protects the piece before the fuse, so it is kept to 178 mm bare and
1016 mm in a sheath of its own (33 CFR 183.455, a law for boats, used as good
practice). A load has a fuse before it wherever it is. Wires of the vehicle
itself count as the source.`,
	Good: lampCircuit,
	Mistake: []string{
		`  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
`,
		`  W1: {from: battery+, to: F1, size: 16 AWG, length: 1.5 m, colour: RD}
`,
	},
}

// judgeUnfused finds wires too far from the source without a fuse, and loads
// with none before them.
func judgeUnfused(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for _, set := range s.Settings {
		runs := s.Graph.Runs(set.Open)
		for i := range n.Branches {
			b := &n.Branches[i]
			e := n.Of(b).Basics()
			switch {
			case set.Open[i] || e.Vehicle:
			case b.Kind == circuit.WireKind:
				judgeRun(s, runs, i, say)
			case n.Draws(b) || b.Role == circuit.Coil:
				if math.IsInf(runs[b.From], 1) && (b.Role != circuit.Coil || math.IsInf(runs[b.To], 1)) {
					continue
				}
				say(Judgment{Verdict: calc.Stop, Part: b.Part, Message: e.Name + " has no fuse before it",
					Do: "put a fuse between the source and " + e.Name + ", close to the source"})
			}
		}
	}
}

// judgeRun judges one wire by how far it goes from the source unfused.
func judgeRun(s *solve.Study, runs []float64, i int, say func(Judgment)) {
	b := &s.Network.Branches[i]
	e := s.Network.Of(b).(*circuit.Wire)
	limit, how := s.Network.Limits.Bare, "bare"
	if e.Sheathed {
		limit, how = s.Network.Limits.Covered, "sheathed"
	}
	end := math.Min(runs[b.From], runs[b.To]) + e.Length
	if math.IsInf(end, 1) || !calc.Over(end, limit) {
		return
	}
	say(Judgment{Verdict: calc.Stop, Part: b.Part,
		Message: e.Name + " ends " + format.Quantity(end, "m") + " from the source with no fuse before it; a " + how + " wire may run " + format.Quantity(limit, "m") + " (33 CFR 183.455)",
		Do:      "put the fuse at the source, before " + e.Name})
}
