package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// PassHole answers what hole a connector and its bundle need.
var PassHole = &calc.Calculator{
	Name:     "pass-hole",
	Title:    "Hole and grommet for a wire",
	Question: "What size of hole?",
	Doc:      "The hole that lets the connector through and then takes the grommet around the bundle.",
	Decides:  "hole",
	Inputs: []calc.Input{
		{Name: "connector_width", Label: "Connector width", Unit: "mm", Min: 1, Max: 100, Default: "18",
			Help: "Across the widest part that must pass, latch included. Calipers on the connector itself."},
		{Name: "connector_height", Label: "Connector height", Unit: "mm", Min: 1, Max: 100, Default: "12",
			Help: "The other way across the same part."},
		{Name: "bundle", Label: "Bundle", Unit: "mm", Min: 0.5, Max: 60, Default: "6",
			Help: "Over the wires and their sleeve where they pass the panel. The bundle calculator gives it."},
		{Name: "panel", Label: "Panel thickness", Unit: "mm", Min: 0.4, Max: 6, Default: "0.8",
			Help: "Of the sheet at the hole. Measure at an edge nearby; body sheet is mostly 0.7 mm to 1.2 mm."},
		{Name: "wall", Label: "Grommet wall", Unit: "mm", Min: 0.5, Max: 8, Default: "2",
			Help: "Of rubber in the hole between bundle and metal: (groove diameter − bore) / 2 on the grommet."},
	},
	Outputs: []calc.Output{
		{Name: "hole", Label: "Hole", Unit: "mm", Help: "the next whole even millimetre that does for both"},
		{Name: "bare", Label: "Connector passes", Unit: "mm", Figures: 4, Help: "corner to corner"},
		{Name: "grommet_bore", Label: "Grommet bore", Unit: "mm"},
		{Name: "edge", Label: "Edge and groove", Text: true},
	},
	Sources: []calc.Source{
		{Text: "Corner to corner of the connector, Pythagoras"},
		{Text: "A grommet wherever the bundle cannot be held 3/8 in (9.5 mm) from the metal, FAA AC 43.13-1B paragraph 11-117"},
		{Text: "Groove as wide as the panel is thick, up to 0.5 mm more; even drill sizes", Standing: "common practice, no source"},
		{Text: "Deburr, remove chips, prime, topcoat, wax, then grommet", Standing: "common practice, no source"},
	},
	Limits: []string{
		"A connector with a corner latch or a boot behind may need more: try it in a card template first.",
		"Keep the middle of the hole at least two hole diameters from any panel edge (common practice).",
	},
	Cautions: []string{
		"Look behind the panel before any drill: harness, fuel and brake lines, restraint parts. Set a depth stop.",
		"Drill no pillar, frame rail or restraint mounting, and no high-strength panel without the maker's leave.",
		"A bare edge rusts and cuts wire: no hole without coating and grommet.",
	},
	Run:    passHole,
	Figure: drawPassHole,
}

// EvenHole is the next whole even millimeter at or above a size in mm; a size
// that is one already, but for rounding, stays.
func EvenHole(size float64) float64 {
	hole := 2 * math.Floor(size/2)
	if calc.Over(size, hole) {
		hole += 2
	}
	return hole
}

func passHole(in *calc.Values, out *calc.Result) *calc.Problem {
	w, h := in.Num("connector_width"), in.Num("connector_height")
	bundle, wall := in.Num("bundle"), in.Num("wall")
	bare := math.Hypot(w, h)
	grommet := bundle + 2*wall
	hole := EvenHole(math.Max(bare, grommet))
	out.Set("bare", bare)
	out.Set("grommet_bore", bundle)
	out.Set("hole", hole)
	out.SetText("edge", out.Fill("Deburr both sides, take out the chips, degrease, coat the bare edge with primer and topcoat and let them dry. "+
		"Then fit a grommet with a groove {1:4 mm} to {2:4 mm} wide and {hole:6} across, for the panel of {panel}.", in.Num("panel"), in.Num("panel")+0.5))
	out.Work("Connector: √(({connector_width})² + ({connector_height})²) = {bare}")
	out.Work("Grommet: bundle {bundle} + 2 × wall {wall} = {1:4 mm}", grommet)
	out.Work("Next whole even size at or above both: {hole:6}")
	return nil
}
