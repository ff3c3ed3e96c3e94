package camera

import (
	"math"

	"baybook/calculators/calc"
)

// drawSensorRow draws the plan, with what no beam covers hatched, and the side
// view with the beam's lower edge.
func drawSensorRow(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 404, out.Fill("Plan: {count} sensors {spacing} apart, at {positions}; their beams meet {blind} out. Side view: sensors {height} up."))
	drawSensorPlan(d, in, out)
	drawSensorSide(d, in, out)
	return d
}

// drawSensorPlan looks down on the bumper: the beams, and hatched between them
// the ground that none of them covers.
func drawSensorPlan(d *calc.Drawing, in *calc.Values, out *calc.Result) {
	const left, width, top, depth = 24.0, 272.0, 56.0, 118.0
	n, spacing := in.Int("count"), width/float64(in.Int("count"))
	scale := width / in.Num("width")
	blind := out.Num("blind") * scale
	shown := math.Min(blind, depth) // the gap may reach past the drawing
	d.Text(calc.Point{X: left, Y: 18}, calc.Start, "Plan, hatched: not covered")
	d.Rect(calc.Point{X: left, Y: top - 12}, width, 12, calc.Outline, calc.Tint)
	half := math.Tan(in.SI("beam") / 2)
	for i := range n {
		x := left + spacing*(float64(i)+0.5)
		d.Circle(calc.Point{X: x, Y: top}, 3.5, calc.Outline, calc.Ink)
		for _, side := range [...]float64{-1, 1} {
			reach := spacing / 2 // sideways, as far as the next beam
			if i == 0 && side < 0 || i == n-1 && side > 0 {
				reach += 14
			}
			along := math.Min(depth, reach/half)
			d.Line(calc.Point{X: x, Y: top}, calc.Point{X: x + side*along*half, Y: top + along}, calc.Thin)
		}
		if i > 0 {
			hatchGap(d, x-spacing/2, top, spacing, blind, shown)
		}
	}
	first := left + spacing/2
	d.Span(first, first+spacing, top-20, out.Fill("{spacing:4}"))
	if blind <= depth {
		d.Line(calc.Point{X: left, Y: top + blind}, calc.Point{X: left + width, Y: top + blind}, calc.Hidden)
	}
	d.TextWithin(calc.Point{X: 160, Y: top + depth + 24}, out.Fill("dashed: beams meet {blind} out"))
}

// hatchGap hatches the triangle between two sensors that no beam covers; its
// base lies on the bumper, its point where the beams meet.
func hatchGap(d *calc.Drawing, middle, top, spacing, blind, shown float64) {
	const pitch = 5.0
	for y := pitch; y < shown; y += pitch {
		half := spacing / 2 * (1 - y/blind)
		d.Line(calc.Point{X: middle - half, Y: top + y}, calc.Point{X: middle + half, Y: top + y}, calc.Thin)
	}
}

// drawSensorSide looks from the side: the sensor, its beam and the ground.
func drawSensorSide(d *calc.Drawing, in *calc.Values, out *calc.Result) {
	const left, right, base = 60.0, 306.0, 346.0
	const rise = 90.0 // the sensor's height as drawn
	eye := calc.Point{X: left, Y: base - rise}
	d.Text(calc.Point{X: 24, Y: 226}, calc.Start, "Side view")
	d.Line(calc.Point{X: 14, Y: base}, calc.Point{X: right, Y: base}, calc.Outline)
	d.Line(calc.Point{X: left, Y: base}, eye, calc.Center)
	d.Circle(eye, 3.5, calc.Outline, calc.Ink)
	d.Text(calc.Point{X: left - 8, Y: base - rise/2}, calc.End, in.Get("height").Text)
	for _, edge := range [...]float64{-1, 1} {
		up := in.SI("tilt") + edge*in.SI("beam_up")/2
		end := beamEnd(eye, up, right, base)
		d.Line(eye, end, calc.Thin)
	}
	if !out.Get("ground").Present {
		d.TextWithin(calc.Point{X: 160, Y: base + 24}, "the lower edge does not meet the ground ahead")
		return
	}
	x := left + rise/math.Tan(in.SI("beam_up")/2-in.SI("tilt"))
	said := "beam meets the ground {ground:4} out"
	if x <= right {
		d.Circle(calc.Point{X: x, Y: base}, 3.5, calc.Outline, calc.Paper)
		said = "ring: " + said
	}
	d.TextWithin(calc.Point{X: 160, Y: base + 24}, out.Fill(said))
}

// beamEnd is where an edge of the beam, at the angle up in rad, leaves the
// drawing.
func beamEnd(eye calc.Point, up, right, base float64) calc.Point {
	const ceiling = 236.0
	run := right - eye.X
	slope := math.Tan(math.Max(-1.55, math.Min(1.55, up)))
	if fall := -slope; fall > 0 {
		run = math.Min(run, (base-eye.Y)/fall)
	} else if slope > 0 {
		run = math.Min(run, (eye.Y-ceiling)/slope)
	}
	return calc.Point{X: eye.X + run, Y: eye.Y - slope*run}
}
