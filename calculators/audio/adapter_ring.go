package audio

import (
	"math"

	"baybook/calculators/calc"
)

// AdapterRing answers where the holes of a speaker adapter go.
var AdapterRing = &calc.Calculator{
	Name:     "adapter-ring",
	Title:    "Adapter ring for a speaker",
	Question: "Where do the holes of the ring go?",
	Doc:      "The spacing of the screw holes, the material left beside them and the area of the ring, with a paper template at true size.",
	Decides:  "chord",
	Inputs: []calc.Input{
		{Name: "outer", Label: "Outer diameter", Unit: "mm", Min: 60, Max: 450, Default: "190",
			Help: "What the door's face and the trim leave room for."},
		{Name: "inner", Label: "Inner diameter", Unit: "mm", Min: 40, Max: 400, Default: "142",
			Help: "The speaker's cutout."},
		{Name: "screw_circle", Label: "Screw circle", Unit: "mm", Min: 50, Max: 430, Default: "156",
			Help: "Diameter through the middles of the holes, off the speaker's data sheet."},
		{Name: "screws", Label: "Screws", Kind: calc.Count, Min: 2, Max: 12, Default: "4", Help: "Evenly round the circle."},
		{Name: "hole", Label: "Hole", Unit: "mm", Min: 1, Max: 12, Default: "4", Help: "Drill diameter."},
	},
	Outputs: []calc.Output{
		{Name: "chord", Label: "Hole to hole", Unit: "mm", Figures: 4, Help: "straight, between neighbouring middles: set dividers to it"},
		{Name: "inner_land", Label: "Left inside", Unit: "mm", Help: "from a hole's edge to the inner edge"},
		{Name: "outer_land", Label: "Left outside", Unit: "mm", Help: "from a hole's edge to the outer edge"},
		{Name: "area", Label: "Area of the ring", Unit: "cm2", Help: "holes taken out"},
	},
	Sources: []calc.Source{
		{Text: "Chord = screw circle × sin(180° / n), geometry"},
		{Text: "At least one hole diameter of material beside a hole", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Round speakers with evenly spaced screws only.",
		"Wood splits and swells, plastic creeps: seal it, pre-drill it, and keep more land in soft stuff.",
	},
	Cautions: []string{
		"Print at 100 %, without fitting to the page, and measure the check bar before you cut.",
		"Wear eye and breathing protection when you cut board; its dust harms lungs.",
		"Screws must not reach glass, wiring, airbag sensors or window parts.",
	},
	Run:    adapterRing,
	Figure: drawAdapterRing,
}

// Chord is the straight distance between neighbors among n points spread
// evenly on a circle, in the unit of its diameter.
func Chord(diameter float64, n int) float64 { return diameter * math.Sin(math.Pi/float64(n)) }

func adapterRing(in *calc.Values, out *calc.Result) *calc.Problem {
	outer, inner, circle, hole := in.Num("outer"), in.Num("inner"), in.Num("screw_circle"), in.Num("hole")
	if !calc.Under(inner, outer) {
		return calc.NewProblem("inner", out.Fill("{inner} is not below the outer diameter of {outer}; give a smaller inner or a larger outer diameter"))
	}
	n := in.Int("screws")
	inside, outside := (circle-inner-hole)/2, (outer-circle-hole)/2
	out.Set("chord", Chord(circle, n))
	out.Set("inner_land", inside)
	out.Set("outer_land", outside)
	out.Set("area", math.Pi/4*(outer*outer-inner*inner-float64(n)*hole*hole)/100)
	judgeLand(out, "inside", inside, circle, inner, hole)
	judgeLand(out, "outside", outside, outer, circle, hole)
	out.Work("Hole to hole: {screw_circle} × sin(180° / {screws}) = {1:4 mm}", Chord(circle, n))
	out.Work("Inside: ({screw_circle} − {inner} − {hole}) / 2 = {1:4 mm}", inside)
	out.Work("Outside: ({outer} − {screw_circle} − {hole}) / 2 = {1:4 mm}", outside)
	out.Work("Area: π/4 × (({outer})² − ({inner})² − {screws} × ({hole})²) = {area:4}")
	return nil
}

// judgeLand judges the material between a hole and an edge of the ring: wide
// and narrow are the diameters that bound it, all in mm.
func judgeLand(out *calc.Result, side string, land, wide, narrow, hole float64) {
	switch {
	case !calc.Over(wide, narrow+hole):
		out.Stop("no material is left "+side+" the holes ({1:4 mm}): change the ring or the screw circle", land)
	case calc.Under(wide, narrow+3*hole):
		out.Check("only {1:4 mm} is left "+side+" the holes, under one hole diameter: it may break out", land)
	}
}
