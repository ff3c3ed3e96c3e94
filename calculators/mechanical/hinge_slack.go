package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// HingeSlack answers how long a loop across a hinge must be, and whether it
// bends too tightly.
var HingeSlack = &calc.Calculator{
	Name:     "hinge-slack",
	Title:    "Loop of wire across a hinge",
	Question: "How long must the loop be?",
	Doc:      "The free length between the last clip on the body and the first on the door, and whether the loop bends too tightly anywhere in the swing.",
	Decides:  "loop",
	Inputs: []calc.Input{
		{Name: "body", Label: "Body clip to axis", Unit: "mm", Min: 5, Max: 500, Default: "60",
			Help: "From the hinge's axis to the last clip on the body, square to the axis."},
		{Name: "door", Label: "Door clip to axis", Unit: "mm", Min: 5, Max: 500, Default: "90",
			Help: "From the hinge's axis to the first clip on the door, square to the axis."},
		{Name: "closed_angle", Label: "Angle when closed", Unit: "deg", Min: 0, Max: 180, Default: "60",
			Help: "At the axis, between the lines to the two clips, with the door closed."},
		{Name: "swing", Label: "Swing", Unit: "deg", Min: 5, Max: 180, Default: "70",
			Help: "How far the door opens from there. Measure at its stop."},
		{Name: "wire", Label: "Wire or bundle", Unit: "mm", Min: 0.5, Max: 40, Default: "6",
			Help: "Diameter over everything that crosses, boot not counted."},
		{Name: "bend_factor", Label: "Bend factor", Min: 1, Max: 20, Default: "10",
			Help: "Least bend radius in wire diameters: 10 for what moves; some data sheets allow 6."},
	},
	Outputs: []calc.Output{
		{Name: "loop", Label: "Free length", Unit: "mm", Figures: 4, Help: "from clip to clip, with 5 % spare"},
		{Name: "bend_radius", Label: "Tightest bend", Unit: "mm", Help: "radius of the loop where the clips are nearest"},
		{Name: "bend_minimum", Label: "Least bend allowed", Unit: "mm"},
		{Name: "closed", Label: "Clip to clip, closed", Unit: "mm", Figures: 4},
		{Name: "open", Label: "Clip to clip, open", Unit: "mm", Figures: 4},
		{Name: "longest", Label: "Longest in the swing", Unit: "mm", Figures: 4},
		{Name: "shortest", Label: "Shortest in the swing", Unit: "mm", Figures: 4},
	},
	Sources: []calc.Source{
		{Text: "Distances by the law of cosines; the loop as one circular arc, plane geometry"},
		{Text: "Bend radius at least 10 × the diameter, US Army TM 1-1500-204-23-4"},
		{Text: "5 % spare over the longest distance", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Everything lies in one plane across the axis. A run along the hinge twists instead of bending and lives longer: use it where there is room.",
		"A boot or a second clip forces the loop into another shape. Try it through the whole swing by hand.",
	},
	Cautions: []string{
		"Check that nothing pinches, rubs or pulls over the whole swing before the trim goes back.",
		"A door harness may carry restraint wiring: leave that to those licensed for it, and follow the maker's service information.",
	},
	Run:    hingeSlack,
	Figure: drawHingeSlack,
}

// loopSpare is the free length of a loop over the longest distance.
const loopSpare = 1.05

// AnchorDistance is the distance between two points at the given distances
// from an axis, degrees apart (0 to 360), in the unit of the distances: the
// law of cosines, written so that it is exactly 0 where the points meet.
func AnchorDistance(body, door, degrees float64) float64 {
	if degrees > 180 {
		degrees = 360 - degrees // the same place, and exactly 0 at a full turn
	}
	half := math.Sin(degrees * math.Pi / 360)
	return math.Sqrt((body-door)*(body-door) + 4*body*door*half*half)
}

// ArcRadius is the radius of a circular arc of the given length whose ends
// are gap apart, which must be less than length: half the arc's angle is the
// φ in 0 to π with sin φ / φ = gap / length. The arc is more than a half circle
// where the ends are nearer than 2/π of its length, and a whole circle where
// they meet.
func ArcRadius(length, gap float64) float64 {
	ratio := gap / length
	low, high := 0.0, math.Pi // sin φ / φ falls from 1 to 0
	for range 60 {
		middle := (low + high) / 2
		if math.Sin(middle) > ratio*middle {
			low = middle
		} else {
			high = middle
		}
	}
	return length / (low + high)
}

// Swing is what the distance between two anchors does over a swing.
type Swing struct {
	Closed, Open, Longest, Shortest float64
}

// SwingOf follows two anchors from the closed angle through the swing, both in
// degrees. The distance grows up to 180° and falls beyond, so the shortest is
// at an end; the longest is too, unless the swing passes 180°.
func SwingOf(body, door, closedAngle, swing float64) Swing {
	s := Swing{
		Closed: AnchorDistance(body, door, closedAngle),
		Open:   AnchorDistance(body, door, closedAngle+swing),
	}
	s.Shortest = math.Min(s.Closed, s.Open)
	s.Longest = math.Max(s.Closed, s.Open)
	if closedAngle+swing >= 180 { // the closed angle is never beyond 180°
		s.Longest = body + door
	}
	return s
}

func hingeSlack(in *calc.Values, out *calc.Result) *calc.Problem {
	s := SwingOf(in.Num("body"), in.Num("door"), in.Num("closed_angle"), in.Num("swing"))
	loop := loopSpare * s.Longest
	radius, least := ArcRadius(loop, s.Shortest), in.Num("bend_factor")*in.Num("wire")
	out.Set("closed", s.Closed)
	out.Set("open", s.Open)
	out.Set("longest", s.Longest)
	out.Set("shortest", s.Shortest)
	out.Set("loop", loop)
	out.Set("bend_radius", radius)
	out.Set("bend_minimum", least)
	if calc.Under(radius, least) {
		out.Stop("the loop bends to a radius of {bend_radius}, tighter than the least of {bend_minimum}; set the clips further from the axis, " +
			"let the wire run along the hinge and twist, or use a thinner, more flexible one")
	}
	out.Work("Closed: √(({body})² + ({door})² − 2 × {body} × {door} × cos {closed_angle}) = {closed}")
	out.Work("Open, at {1:4 deg}: {open}", in.Num("closed_angle")+in.Num("swing"))
	if in.Num("closed_angle")+in.Num("swing") > 180 {
		out.Work("The swing passes 180 deg, where the clips are furthest apart: {longest}")
	}
	out.Work("Free length: 1.05 × {longest} = {loop}")
	out.Work("An arc that long over a gap of {shortest} has a radius of {bend_radius:4}")
	out.Work("Least radius: {bend_factor} × {wire} = {bend_minimum:4}")
	return nil
}
