package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// ShrinkTube answers which heat-shrink tube goes over a part and still grips.
var ShrinkTube = &calc.Calculator{
	Name:     "shrink-tube",
	Title:    "Heat-shrink tube",
	Question: "Which shrink tube fits?",
	Doc:      "The tube that slides over the thickest part and, once shrunk, still grips the thinnest.",
	Decides:  "size",
	Inputs: []calc.Input{
		{Name: "over", Label: "Slides over", Unit: "mm", Min: 0.5, Max: 84, Default: "8",
			Help: "The thickest part that the tube must pass: the terminal, the connector or the joint."},
		{Name: "grip", Label: "Must grip", Unit: "mm", Min: 0.3, Max: 84, Default: "4",
			Help: "The thinnest part that it must hold tightly: the wire's insulation or the bundle."},
		{Name: "ratio", Label: "Shrink ratio", OneOf: shrinkRatios, Default: "3",
			Help: "2 for 2:1 and so on, printed on the tube or the reel. 3:1 and 4:1 mostly have glue inside."},
	},
	Outputs: []calc.Output{
		{Name: "size", Label: "Tube, as supplied", Unit: "mm", Help: "inside diameter before shrinking"},
		{Name: "recovered", Label: "Tube, fully shrunk", Unit: "mm", Help: "inside diameter where nothing stops it"},
	},
	Sources: []calc.Source{
		{Text: "Supplied sizes from 1/16 in to 4 in, SAE AS23053/5 (earlier AMS-DTL-23053/5)", Standing: "read as restated"},
		{Text: "A fifth of room to slide on, and a tenth of shrinkage left to grip with", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Makers' sizes differ a little: read supplied and recovered inside diameter on the data sheet.",
		"Tube shrinks lengthways too, about a tenth: cut it longer.",
	},
	Cautions: []string{
		"A heat gun near fuel, trim or a restraint part is a fire or worse: shield what stands behind, and keep off airbag connectors.",
		"Never shrink with a flame inside a vehicle.",
	},
	Run:    shrinkTube,
	Figure: drawShrinkTube,
}

// tubeSizes are the inside diameters in mm that shrink tube is supplied with.
var tubeSizes = []float64{1.6, 2.4, 3.2, 4.8, 6.4, 9.5, 12.7, 19.1, 25.4, 38.1, 50.8, 76.2, 101.6}

var shrinkRatios = []float64{2, 3, 4}

const (
	slideRoom = 1.2 // tube over part, to slide on
	gripLeft  = 0.9 // recovered tube over part, to grip
)

// TubeSize is the smallest supplied inside diameter in mm that slides over a
// part; NaN where the part is too thick for all of them.
func TubeSize(over float64) float64 {
	for _, s := range tubeSizes {
		if !calc.Under(s, slideRoom*over) {
			return s
		}
	}
	return math.NaN()
}

// Grips reports whether a tube, shrunk by a ratio, holds a part tightly.
func Grips(size, ratio, part float64) bool { return !calc.Over(size/ratio, gripLeft*part) }

func shrinkTube(in *calc.Values, out *calc.Result) *calc.Problem {
	over, grip, ratio := in.Num("over"), in.Num("grip"), in.Num("ratio")
	if calc.Over(grip, over) {
		return calc.NewProblem("grip", in.Get("grip").Text+" is above over, "+in.Get("over").Text+"; give the thinnest part for grip and the thickest for over")
	}
	size := TubeSize(over)
	recovered := size / ratio
	out.Set("size", size)
	out.Set("recovered", recovered)
	if !Grips(size, ratio, grip) {
		out.Stop("shrunk to {recovered} the tube does not grip {grip} tightly; " + otherRatio(size, grip))
	}
	out.Work("Slides on: 1.2 × {over} = {1:4 mm}, next size {size:4}", slideRoom*over)
	out.Work("Fully shrunk: {size:4} / {ratio} = {recovered:4}")
	out.Work("Grips from: 0.9 × {grip} = {1:4 mm}", gripLeft*grip)
	return nil
}

// otherRatio says which shrink ratio would do.
func otherRatio(size, grip float64) string {
	for _, r := range shrinkRatios {
		if Grips(size, r, grip) {
			return "a ratio of " + calc.Format(r, 1) + " (" + calc.Format(r, 1) + ":1) would do"
		}
	}
	return "no ratio up to 4 (4:1) would do either: build the thin part up with a first tube, or split the joint"
}
