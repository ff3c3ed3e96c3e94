package camera

import (
	"math"

	"baybook/calculators/calc"
)

// CameraView answers what ground a camera shows.
var CameraView = &calc.Calculator{
	Name:     "camera-view",
	Title:    "Ground that a camera shows",
	Question: "How much does the camera see?",
	Doc:      "The nearest and the farthest ground in the picture, and how wide the picture is at a distance.",
	Decides:  "near",
	Inputs: inputs(
		calc.Input{Name: "distance", Label: "At a distance of", Unit: "m", Min: 0.1, Max: 20, Default: "2",
			Help: "Behind the lens, along level ground."},
	),
	Outputs: []calc.Output{
		{Name: "near", Label: "Nearest ground", Unit: "m", Help: "on the centreline, from straight below the lens"},
		{Name: "far", Label: "Farthest ground", Unit: "m", Help: "on the centreline"},
		{Name: "width", Label: "Width of ground", Unit: "m", Help: "in the picture at the distance asked for"},
	},
	Sources: []calc.Source{
		{Text: "Plane geometry of a tilted camera over level ground; lens laws r = f·tan θ and r = f·θ, optics textbooks", Standing: "from memory"},
	},
	Limits: []string{
		"Level ground, a lens that follows its law, and the bumper out of the picture.",
		"The fields of view of a data sheet are often rounded, or those of the sensor before the picture is cropped: measure.",
	},
	Cautions: []string{notTheRule, "A camera does not replace looking: dirt, rain, darkness and load all change what it shows."},
	Run:      cameraView,
	Figure:   drawCameraView,
}

// Reach is the ground on the centerline in the picture, from and to, in m
// from straight below the lens. It is from 0 where the lower edge looks straight
// down or further, to infinity where the upper edge is at the horizon or above,
// and from infinity where the picture shows no ground at all.
func (c Camera) Reach() (near, far float64) {
	lower, upper := c.Tilt+c.VFOV/2, c.Tilt-c.VFOV/2
	near, far = c.Height/math.Tan(lower), math.Inf(1)
	switch {
	case !calc.Over(c.VFOV/2, -c.Tilt):
		near = math.Inf(1)
	case !calc.Under(lower, math.Pi/2):
		near = 0
	}
	if calc.Over(c.Tilt, c.VFOV/2) {
		far = c.Height / math.Tan(upper)
	}
	return near, far
}

// GroundWidth is how much of the ground line across at y m behind the lens is
// in the picture, in m; infinite where it has no end. The middle of the line
// must be in the picture.
//
// Along the line, down and ahead (see turn) stay as they are. A rectilinear
// lens shows it level, so its half-width is ahead·tan(HFOV/2). An equidistant
// one bends it towards the middle, so an upright edge of the picture ends it,
// where θ·cos(direction) = HFOV/2; the line comes in from a right angle, so a
// view of 180° or more does not end it.
func (c Camera) GroundWidth(y float64) float64 {
	p := c.turn(0, y, -c.Height)
	if c.Rectilinear {
		return 2 * p.ahead * math.Tan(c.HFOV/2)
	}
	if !calc.Under(c.HFOV, math.Pi) {
		return math.Inf(1)
	}
	// With δ = π/2 − θ and e = π/2 − HFOV/2, squared:
	// (π/2 − δ)²·(1 − (down/ahead)²·tan²δ) = (π/2 − e)².
	e := math.Pi/2 - c.HFOV/2
	d := root(func(d float64) float64 {
		q := (math.Pi/2 - d) * p.down / p.ahead * math.Tan(d)
		return (e-d)*(math.Pi-e-d) - q*q
	}, 0, e)
	aside := p.ahead / math.Tan(d)
	return 2 * math.Sqrt(math.Max(0, (aside-p.down)*(aside+p.down)))
}

func cameraView(in *calc.Values, out *calc.Result) *calc.Problem {
	c, problem := read(in)
	if problem != nil {
		return problem
	}
	near, far := c.Reach()
	distance := in.SI("distance")
	half := in.Num("vfov") / 2
	if math.IsInf(near, 1) {
		out.Note("no ground is given: the whole picture is above the horizon, and shows no ground; tilt the camera down")
		return nil
	}
	out.Set("near", near)
	if near == 0 {
		out.Work("Lower edge: {tilt} + {vfov} / 2 = {1:4 deg}, straight down or further: nearest 0 m", in.Num("tilt")+half)
	} else {
		out.Work("Lower edge: {tilt} + {vfov} / 2 = {1:4 deg} below the horizon; nearest {height} / tan of it = {near:4}", in.Num("tilt")+half)
	}
	if math.IsInf(far, 1) {
		out.Note("no farthest ground: the upper edge of the picture is at the horizon or above, so the ground in it has no end")
	} else {
		out.Set("far", far)
		out.Work("Upper edge: {tilt} − {vfov} / 2 = {1:4 deg} below the horizon; farthest {height} / tan of it = {far:4}", in.Num("tilt")-half)
	}
	if calc.Under(distance, near) || calc.Over(distance, far) {
		out.Note("no width of ground: ground {distance} away is not in the picture")
		return nil
	}
	width := c.GroundWidth(distance)
	if math.IsInf(width, 1) {
		out.Note("no width of ground: with a field of {hfov} across, the ground line at {distance} has no end in the picture")
		return nil
	}
	out.Set("width", width)
	along := c.turn(0, distance, -c.Height).ahead
	out.Work("At {distance} the ground is {1:4 m} along the lens axis; the picture's upright edges cut it {width:4} apart", along)
	return nil
}
