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
	Doc:      "The smallest round bundle found for a set of wires, laid side by side, and the estimate that a harness maker uses.",
	Decides:  "diameter",
	Inputs: []calc.Input{
		{Name: "wires", Label: "Wires", Kind: calc.Bundle, Unit: "mm", Min: 0.3, Max: 60, Most: 60, Default: "7x2.4,2x3.5mm",
			Help: "Count x outside diameter, with commas between: 7x2.4,2x3.5mm. Measure over the insulation with calipers, or read the data sheet."},
	},
	Outputs: []calc.Output{
		{Name: "diameter", Label: "Bundle diameter", Unit: "mm", Help: "the smallest circle found around all wires"},
		{Name: "estimate", Label: "Estimate", Unit: "mm", Help: "for a bundle as it comes from the hand"},
		{Name: "fill", Label: "Filled", Unit: "%", Help: "the part of the smallest circle that is copper and insulation"},
	},
	Sources: []calc.Source{
		{Text: "Up to 37 equal wires: the best known packings of circles in a circle, Discrete Mathematics 181 (1998) 139–154", Standing: "from memory"},
		{Text: "Estimate 1.2 × √Σd²", Standing: "common practice, no source"},
		{Text: "Search by our own computation: soft circles pressed together from many starts, then made exact"},
	},
	Limits: []string{
		"Wires in a vehicle lie less neatly than this: use the larger of bundle and estimate for a grommet.",
		"Tape, loom or braid come on top.",
		"For wires of several sizes, or more than 37, it is a search: a slightly smaller circle may exist.",
	},
	Cautions: []string{
		"Wires in a bundle heat each other: give “Fuse for a load and its wire” the number that carry current.",
		"Leave room in sleeve and grommet. A bundle pulled in by force chafes, and a chafed wire can burn the vehicle.",
	},
	Search: func(in *calc.Values) calc.Search { return NewPacking(radiiOf(in)) },
	Run:    bundle,
	Figure: drawBundle,
}

// looseness is the ratio of a bundle's diameter to √Σd².
const looseness = 1.2

// radiiOf are the radii of all wires given, in mm.
func radiiOf(in *calc.Values) []float64 {
	var radii []float64
	for _, s := range in.Get("wires").Strands {
		for range s.Count {
			radii = append(radii, s.Diameter/2)
		}
	}
	return radii
}

func bundle(in *calc.Values, out *calc.Result) *calc.Problem {
	squares := 0.0
	for _, r := range radiiOf(in) {
		squares += 4 * r * r
	}
	discs, around := in.Found().(*Packing).Discs()
	out.FigureData = discs
	diameter := 2 * around
	out.Set("diameter", diameter)
	out.Set("estimate", looseness*math.Sqrt(squares))
	out.SetSI("fill", squares/(diameter*diameter))
	out.Work("Sum of the squares of all diameters: {1:4 mm²}", squares)
	out.Work("Estimate: 1.2 × √{1:4 mm²} = {estimate:4}", squares)
	out.Work("Smallest circle found around all wires: {diameter:4}")
	out.Work("Filled: {1:4 mm²} / ({diameter:4})² = {fill}", squares)
	return nil
}
