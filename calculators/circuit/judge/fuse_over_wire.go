package judge

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

var fuseOverWire = Rule{Name: "fuse-over-wire", judge: judgeFuseOverWire}

var fuseOverWireManual = Manual{
	Rule:  "fuse-over-wire",
	Firm:  true,
	Title: "No fuse lets through more than the wire behind it may carry",
	Why: `A fuse protects the wire, not the device. What a wire may carry is that of
the calculator fuse-size: size, insulation, air and bundle. Where a wire has
two feeds, their fuses count together.`,
	Good: lampCircuit,
	Mistake: []string{
		`  F1: {rating: 5 A}
`,
		`  F1: {rating: 30 A, type: E}
`,
	},
}

// judgeFuseOverWire compares what the fuses let through with what each wire
// may carry, from each of its ends.
func judgeFuseOverWire(s *solve.Study, say func(Judgment)) {
	n := s.Network
	for _, set := range s.Settings {
		for i := range n.Branches {
			b := &n.Branches[i]
			e, ok := n.Of(b).(*circuit.Wire)
			if !ok || e.Vehicle || set.Open[i] || !set.Feed[b.From] || !set.Feed[b.To] || set.Return[b.From] || set.Return[b.To] {
				continue
			}
			limit := n.Ampacity(e)
			for _, end := range [...]int{b.From, b.To} {
				through, cut := s.Graph.MaxFuseCurrent(end, i, set.Open)
				if math.IsInf(through, 1) || !calc.Over(through, limit) {
					continue
				}
				say(wordFuseOverWire(n, b.Part, through, limit, cut))
			}
		}
	}
}

// wordFuseOverWire words that judgment.
func wordFuseOverWire(n *circuit.Network, wire int, through, limit float64, cut []int) Judgment {
	e := n.Parts[wire].(*circuit.Wire)
	before := n.Names(cut) + " of " + format.Amps(through)
	if len(cut) > 1 {
		before = n.Names(cut) + ", " + format.Amps(through) + " together"
	}
	do := "take a smaller fuse"
	if size := n.SizeFor(e, through); size != "" {
		do = "take a smaller fuse, or the smallest size that carries it: " + size
	}
	return Judgment{Verdict: calc.Stop, Part: wire, Do: do,
		Message: e.Name + " is behind " + before + " and may carry " + format.Amps(limit) + " (" + e.Size + ", " + calc.FormatUnit(e.Insulation, 3, "C") +
			" insulation in air of " + calc.FormatUnit(n.Limits.Ambient, 3, "C") + ")"}
}
