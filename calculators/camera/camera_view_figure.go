package camera

import (
	"math"

	"baybook/calculators/calc"
)

// A groundView is a section through the lens, back to the right.
type groundView struct {
	d            *calc.Drawing
	ground       float64 // its y
	scale, reach float64 // px a m, m drawn
}

const (
	groundLeft = 22.0  // x under the lens
	groundLong = 276.0 // px drawn behind it
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
	middle := g.ground + 92 + planHalf
	g.d = calc.NewDrawing(320, middle+planHalf+planRoom, out.Fill(text))
	width := 0.0
	if out.Get("width").Present {
		width = out.Num("width")
	}
	plan := newGroundPlan(g.d, middle, g.scale, width)
	plan.draw(c, near, far)
	if width > 0 {
		plan.across(y, width, out.Fill("{width} wide at {distance}"))
	}
	plan.bar()
	g.section(c, near, far)
	g.spans(near, far, out)
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
	g.ray(c, c.Tilt, calc.Center)
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

// spans dimensions near and far.
func (g groundView) spans(near, far float64, out *calc.Result) {
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
}
