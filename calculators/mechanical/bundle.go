package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// BundleSize answers how thick a bundle of wires is.
var BundleSize = &calc.Calculator{
	Name:     "bundle",
	Title:    "Bundle diameter",
	Question: "How thick is the bundle?",
	Doc:      "The smallest circle found that holds the wires side by side without overlap, and the quick estimate beside it.",
	Inputs: []calc.Input{
		{Name: "wires", Label: "Wires", Kind: calc.Bundle, Unit: "mm", Min: 0.3, Max: 60, Most: 60, Default: "7x2.4",
			Help: "Count × outside diameter over the insulation, a comma between kinds: 7x2.4, 2x3.5mm. Measure with a caliper, not by the conductor."},
	},
	Outputs: []calc.Output{
		{Name: "diameter", Label: "Bundle diameter", Unit: "mm", Help: "of the circle drawn, before tape or sleeve"},
		{Name: "estimate", Label: "Quick estimate", Unit: "mm", Help: "1.2 × the root of the sum of the squares"},
		{Name: "fill", Label: "Filled", Unit: "%", Help: "share of the circle that is copper and insulation"},
	},
	Sources: []calc.Source{
		{Text: "A search for the densest packing, checked against the best known packings of equal circles, Discrete Mathematics 181 (1998) 139–154", Standing: "from memory"},
		{Text: "Estimate 1.2·√Σd²", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Wires in a vehicle lie looser than drawn: leave spare room in sleeve and grommet.",
		"Connectors and splices are thicker than the bundle.",
	},
	Cautions: []string{
		"Wires bundled together warm each other: ask fuse-size with the number that carry current.",
	},
	Run:    bundle,
	Figure: drawBundle,
}

// radiiOf lists the radius of every wire, in the unit of the strands.
func radiiOf(strands []calc.Strand) []float64 {
	var radii []float64
	for _, s := range strands {
		for range s.Count {
			radii = append(radii, s.Diameter/2)
		}
	}
	return radii
}

func bundle(in *calc.Values, out *calc.Result) *calc.Problem {
	radii := radiiOf(in.Get("wires").Strands)
	_, around := Pack(radii)
	squares := 0.0
	for _, r := range radii {
		squares += 4 * r * r
	}
	out.Set("diameter", 2*around)
	out.Set("estimate", estimateFactor*math.Sqrt(squares))
	out.Set("fill", 100*squares/(4*around*around))
	out.Work("Sum of the squares of the diameters: {1:4 mm²}", squares)
	out.Work("Estimate: 1.2 × √{1:4} = {estimate:4}", squares)
	out.Work("Smallest circle found: {diameter:4}, of which {fill} is filled")
	return nil
}

// estimateFactor is the harness trade's allowance for gaps between wires.
const estimateFactor = 1.2
