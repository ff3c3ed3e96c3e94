package camera

import (
	"math"

	"baybook/calculators/calc"
)

// A groundView is a section through the lens and a plan under it, both to one
// scale, back to the right.
type groundView struct {
	d              *calc.Drawing
	ground, middle float64 // y of the ground in the section, of the centreline in the plan
	scale, reach   float64 // px a m, m drawn
}

const (
	groundLeft = 22.0  // x under the lens
	groundLong = 276.0 // px drawn behind it
	planHalf   = 58.0  // px drawn to either side of the centreline
)

// drawCameraView draws what of the ground is seen, from the side and from
// above.
func drawCameraView(in *calc.Values, out *calc.Result) *calc.Drawing {
	c, _ := read(in)
	near, far := c.Reach()
	text := "Section and plan: lens {height} up, tilted {tilt} down; "
	if math.IsInf(near, 1) {
		text += "all sky."
	} else {
		text += "ground seen from {near}"
		if out.Get("far").Present {
			text += " to {far}"
		}
		if out.Get("width").Present {
			text += "; {width} wide at {distance}"
		}
		text += "."
	}
	y := in.SI("distance")
	g := groundView{reach: math.Max(1.3*y, 1.6*c.Height)}
	if near < 40 {
		g.reach = math.Max(g.reach, 1.6*near)
	}
	if far < 2.5*g.reach {
		g.reach = math.Max(g.reach, 1.1*far)
	}
	g.scale = groundLong / g.reach
	g.ground = 38 + math.Max(30, c.Height*g.scale)
	g.middle = g.ground + 92 + planHalf
	g.d = calc.NewDrawing(320, g.middle+planHalf+28, out.Fill(text))
	g.plan(c, near, far)
	g.section(c, near, far)
	g.spans(y, near, far, out)
	return g.d
}

// at maps m behind the lens and m up to the section.
func (g groundView) at(y, z float64) calc.Point {
	return calc.Point{X: groundLeft + y*g.scale, Y: g.ground - z*g.scale}
}

// section draws the lens over the ground with the edges of its view.
func (g groundView) section(c Camera, near, far float64) {
	lens := g.at(0, c.Height)
	g.ray(c, c.Tilt-c.VFOV/2, calc.Outline)
	g.ray(c, c.Tilt, calc.Centre)
	g.ray(c, c.Tilt+c.VFOV/2, calc.Outline)
	g.d.Line(calc.Point{X: 4, Y: g.ground}, calc.Point{X: 316, Y: g.ground}, calc.Outline)
	if from, to := math.Min(near, g.reach), math.Min(far, g.reach); to > from {
		g.d.Line(g.at(from, 0), g.at(to, 0), calc.Heavy)
	}
	g.d.Circle(lens, 4, calc.Outline, calc.Ink)
	g.d.TextWithin(calc.Point{X: 160, Y: 14}, "from the side")
}

// ray draws an edge of the view from the lens to the ground or out of the
// drawing.
func (g groundView) ray(c Camera, down float64, s calc.Stroke) {
	sin, cos := math.Sincos(down)
	lens := g.at(0, c.Height)
	long := math.Inf(1)
	for _, room := range [...]struct{ step, to float64 }{
		{cos, 316 - lens.X}, {-cos, lens.X - 4}, {sin, g.ground - lens.Y}, {-sin, lens.Y - 20},
	} {
		if room.step > 0 {
			long = math.Min(long, room.to/room.step)
		}
	}
	g.d.Line(lens, calc.Point{X: lens.X + long*cos, Y: lens.Y + long*sin}, s)
}

// plan draws the ground seen, from above.
func (g groundView) plan(c Camera, near, far float64) {
	x := func(y float64) float64 { return groundLeft + y*g.scale }
	g.d.Line(calc.Point{X: 4, Y: g.middle}, calc.Point{X: 316, Y: g.middle}, calc.Centre)
	if to := math.Min(far, g.reach); near < to {
		const steps = 32
		var outline, other []calc.Point
		for i := 0.0; i <= steps; i++ {
			y := near + (to-near)*i/steps
			half := math.Min(c.GroundWidth(y)/2*g.scale, planHalf)
			outline = append(outline, calc.Point{X: x(y), Y: g.middle - half})
			other = append(other, calc.Point{X: x(y), Y: g.middle + half})
		}
		for i := range other {
			outline = append(outline, other[len(other)-1-i])
		}
		g.d.Polygon(outline, calc.Outline, calc.Tint)
	}
	g.d.Circle(calc.Point{X: groundLeft, Y: g.middle}, 4, calc.Outline, calc.Ink)
	g.d.TextWithin(calc.Point{X: 160, Y: g.middle + planHalf + 20}, "from above")
}

// spans dimensions near, far and the width at a distance.
func (g groundView) spans(y, near, far float64, out *calc.Result) {
	row := g.ground + 30
	if math.IsInf(near, 1) {
		g.d.TextWithin(calc.Point{X: 160, Y: row}, "all sky: no ground in the picture")
		return
	}
	span := func(to float64, label string) {
		if to > g.reach {
			g.d.TextWithin(calc.Point{X: 160, Y: row - 5}, out.Fill(label)+", off this drawing")
		} else {
			g.d.Line(g.at(to, 0), calc.Point{X: g.at(to, 0).X, Y: row + 4}, calc.Thin)
			g.d.Span(groundLeft, g.at(to, 0).X, row, out.Fill(label))
		}
		row += 26
	}
	span(near, "near {near}")
	if math.IsInf(far, 1) {
		g.d.TextWithin(calc.Point{X: 160, Y: row - 5}, "far: no end, the horizon is in the picture")
	} else {
		span(far, "far {far}")
	}
	if out.Get("width").Present {
		half := math.Min(out.Num("width")/2*g.scale, planHalf)
		p := calc.Point{X: g.at(y, 0).X, Y: g.middle}
		a, b := calc.Point{X: p.X, Y: p.Y - half}, calc.Point{X: p.X, Y: p.Y + half}
		g.d.Line(a, b, calc.Heavy)
		g.d.Label(calc.Point{X: g.middleOf(p.X, out.Fill("{width} wide at {distance}")), Y: p.Y + 4}, calc.Middle, out.Fill("{width} wide at {distance}"))
	}
}

// middleOf keeps the middle of a text inside the drawing.
func (g groundView) middleOf(x float64, text string) float64 {
	half := calc.TextWidth(text, calc.TextSize)/2 + 4
	return math.Max(half, math.Min(g.d.Width-half, x))
}
