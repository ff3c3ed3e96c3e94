package audio

import (
	"math"

	"baybook/calculators/calc"
)

// drawCoilLoad draws the coils in their strings between the amplifier's two
// terminals.
func drawCoilLoad(in *calc.Values, out *calc.Result) *calc.Drawing {
	coils, rows := in.Int("coils"), in.Int("strings")
	columns := coils / rows
	apart := 34.0
	if rows > 6 {
		apart = 20
	}
	bottom := 44 + apart*float64(rows-1)
	d := calc.NewDrawing(320, bottom+56, out.Fill("{coils} coils of {impedance}, "+arrangement(coils, rows)+": {load:3} at the amplifier."))
	const left, right = 64.0, 296.0
	for row := range rows {
		y := 44 + apart*float64(row)
		d.Line(calc.Point{X: left, Y: y}, calc.Point{X: right, Y: y}, calc.Outline)
		pitch := (right - left) / float64(columns)
		for column := range columns {
			drawCoil(d, calc.Point{X: left + pitch*(float64(column)+0.5), Y: y}, min(30, 0.8*pitch))
		}
	}
	for _, x := range [...]float64{left, right} {
		d.Line(calc.Point{X: x, Y: 44}, calc.Point{X: x, Y: bottom}, calc.Outline)
	}
	middle := (44 + bottom) / 2
	d.Line(calc.Point{X: 20, Y: middle}, calc.Point{X: left, Y: middle}, calc.Outline)
	d.Circle(calc.Point{X: 20, Y: middle}, 4, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 8, Y: middle - 10}, calc.Start, "+")
	d.Polyline([]calc.Point{{X: right, Y: middle}, {X: 310, Y: middle}, {X: 310, Y: bottom + 20}, {X: 20, Y: bottom + 20}}, calc.Outline)
	d.Circle(calc.Point{X: 20, Y: bottom + 20}, 4, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 8, Y: bottom + 14}, calc.Start, "−")
	d.Text(calc.Point{X: 160, Y: 18}, calc.Middle, out.Fill("{coils} × {impedance}, "+arrangement(coils, rows)))
	d.Text(calc.Point{X: 160, Y: bottom + 46}, calc.Middle, out.Fill("Load {load:3}, amplifier at least {amp_minimum}"))
	return d
}

// drawCoil draws a coil as four humps over a cleared piece of line.
func drawCoil(d *calc.Drawing, at calc.Point, width float64) {
	const humps = 4
	r := width / (2 * humps)
	d.Rect(calc.Point{X: at.X - width/2, Y: at.Y - r - 2}, width, r+4, calc.Bare, calc.Paper)
	for i := range humps {
		x := at.X - width/2 + r*float64(2*i+1)
		d.Arc(calc.Point{X: x, Y: at.Y}, r, -math.Pi, 0, calc.Outline)
	}
}
