package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// drawHingeSlack looks along the axis: both clips, the swing, the loop where
// it is tightest (heavy) and the longest distance (dashed), to scale.
func drawHingeSlack(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 268, out.Fill("A hinge seen along its axis, clips {body} and {door} from it: {closed} apart closed, {open} open, "+
		"{longest} at the most. The loop is {loop} long and bends to a radius of {bend_radius}; {bend_minimum} is the least allowed."))
	h := layHinge(in, out)
	page := h.fit(calc.Point{X: 12, Y: 8}, 296, 196)
	path := func(points []calc.Point, s calc.Stroke) {
		on := make([]calc.Point, len(points))
		for i, p := range points {
			on[i] = page(p)
		}
		d.Polyline(on, s)
	}
	axis := page(calc.Point{})
	d.Line(axis, page(h.body), calc.Outline)
	d.Line(axis, page(h.closed), calc.Outline)
	d.Line(axis, page(h.open), calc.Hidden)
	path(h.sweep, calc.Center)
	d.Line(page(h.body), page(h.farthest), calc.Hidden)
	path(h.loop, calc.Heavy)
	d.Circle(axis, 4, calc.Outline, calc.Paper)
	for _, p := range []calc.Point{h.body, h.closed, h.open} {
		d.Circle(page(p), 3, calc.Outline, calc.Ink)
	}
	labels := calc.NewLabels(d, calc.Point{X: 2, Y: 2}, 316, 208)
	for _, p := range []calc.Point{{}, h.body, h.closed, h.open} {
		q := page(p)
		labels.Keep(calc.Point{X: q.X - 4, Y: q.Y - 4}, 8, 8)
	}
	for _, line := range [][]calc.Point{h.loop, h.sweep, {h.body, {}, h.closed}, {{}, h.open}, {h.body, h.farthest}} {
		for i := 1; i < len(line); i++ {
			labels.KeepLine(page(line[i-1]), page(line[i]))
		}
	}
	labels.Put(axis, "axis")
	labels.Put(page(h.body), "body")
	labels.Put(page(h.closed), "closed")
	labels.Put(page(h.open), "open")
	for i, line := range [...]string{
		"Clip to clip {closed} closed, {open} open",
		"Dashed: longest, {longest}; loop {loop}",
		"Heavy: tightest, R {bend_radius} (least {bend_minimum})",
	} {
		d.Text(calc.Point{X: 8, Y: 226 + 17*float64(i)}, calc.Start, out.Fill(line))
	}
	return d
}

// A hinge is the plan of one in mm, the axis at the origin, y downwards.
type hinge struct {
	body, closed, open, farthest calc.Point
	sweep, loop                  []calc.Point
}

func layHinge(in *calc.Values, out *calc.Result) hinge {
	a, b := in.Num("body"), in.Num("door")
	from := in.Num("closed_angle")
	to := from + in.Num("swing")
	door := func(degrees float64) calc.Point {
		t := degrees * math.Pi / 180
		return calc.Point{X: -b * math.Cos(t), Y: -b * math.Sin(t)}
	}
	h := hinge{body: calc.Point{X: -a}, closed: door(from), open: door(to)}
	for i := range 41 {
		h.sweep = append(h.sweep, door(from+(to-from)*float64(i)/40))
	}
	nearest := h.closed
	if out.Num("open") < out.Num("closed") {
		nearest = h.open
	}
	h.farthest = h.open
	if to > 180 {
		h.farthest = door(180)
	} else if out.Num("open") < out.Num("closed") {
		h.farthest = h.closed
	}
	h.loop = arcBetween(h.body, nearest, out.Num("loop"), out.Num("bend_radius"))
	return h
}

// arcBetween is a circular arc of a length and radius between two points, on
// the side that is away from the origin.
func arcBetween(a, b calc.Point, length, radius float64) []calc.Point {
	middle := calc.Point{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}
	nx, ny := b.Y-a.Y, a.X-b.X // square to the chord
	if math.Hypot(nx, ny) < 1e-6*radius {
		nx, ny = middle.X, middle.Y
	} else if nx*middle.X+ny*middle.Y < 0 {
		nx, ny = -nx, -ny
	}
	n := math.Hypot(nx, ny)
	nx, ny = nx/n, ny/n
	half := length / radius / 2
	center := calc.Point{X: middle.X - nx*radius*math.Cos(half), Y: middle.Y - ny*radius*math.Cos(half)}
	const steps = 48
	points := make([]calc.Point, 0, steps+1)
	for i := 0; i <= steps; i++ {
		t := half * (2*float64(i)/steps - 1)
		c, s := math.Cos(t), math.Sin(t)
		points = append(points, calc.Point{
			X: center.X + radius*(nx*c-ny*s),
			Y: center.Y + radius*(ny*c+nx*s),
		})
	}
	return points
}

// fit maps the plan into a part of the drawing, as large as it goes.
func (h *hinge) fit(at calc.Point, width, height float64) func(calc.Point) calc.Point {
	low, high := calc.Point{}, calc.Point{}
	for _, list := range [][]calc.Point{{h.body, h.closed, h.open}, h.sweep, h.loop} {
		for _, p := range list {
			low.X, low.Y = math.Min(low.X, p.X), math.Min(low.Y, p.Y)
			high.X, high.Y = math.Max(high.X, p.X), math.Max(high.Y, p.Y)
		}
	}
	const room = 18 // for lettering around
	scale := math.Min((width-2*room)/(high.X-low.X), (height-2*room)/math.Max(high.Y-low.Y, 1e-9))
	dx := at.X + (width-scale*(low.X+high.X))/2
	dy := at.Y + (height-scale*(low.Y+high.Y))/2
	return func(p calc.Point) calc.Point { return calc.Point{X: dx + scale*p.X, Y: dy + scale*p.Y} }
}
