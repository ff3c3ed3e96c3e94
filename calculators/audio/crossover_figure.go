package audio

import (
	"math"

	"baybook/calculators/calc"
)

// drawCrossover draws the ladder with its values, and the level over
// frequency below it.
func drawCrossover(in *calc.Values, out *calc.Result) *calc.Drawing {
	family, order, high := in.Word("family"), in.Int("order"), in.Word("pass") == "high"
	frequency := in.SI("frequency")
	parts := Ladder(Prototype(filterOf(family, order)), high, in.SI("impedance"), frequency)
	said := ""
	for _, p := range parts {
		said += ", " + showPart(p)
	}
	d := calc.NewDrawing(320, 366, out.Fill("A {pass}-pass from the amplifier to a load of {impedance}"+said+". Crossover "+
		"{frequency}; at {probe}: {level}."))
	drawLadder(d, parts, in.Get("impedance").Text)
	d.Text(calc.Point{X: 304, Y: 152}, calc.End, out.Fill("Dashed: {frequency}"))
	d.Text(calc.Point{X: 304, Y: 168}, calc.End, out.Fill("Ring: {probe}: {level}"))
	response{
		level: func(f float64) float64 {
			if high {
				return FilterLevel(family, order, frequency/f)
			}
			return FilterLevel(family, order, f/frequency)
		},
		probe: in.SI("probe"), line: frequency,
	}.draw(d, 178, 150)
	return d
}

// Heights of the ladder's two rails.
const railTop, railBase = 42.0, 122.0

func drawLadder(d *calc.Drawing, parts []Part, load string) {
	x := 24.0
	d.Circle(calc.Point{X: x, Y: railTop}, 4, calc.Outline, calc.Paper)
	d.Circle(calc.Point{X: x, Y: railBase}, 4, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 8, Y: railTop + 44}, calc.Start, "in")
	d.Line(calc.Point{X: x + 4, Y: railTop}, calc.Point{X: 296, Y: railTop}, calc.Outline)
	d.Line(calc.Point{X: x + 4, Y: railBase}, calc.Point{X: 296, Y: railBase}, calc.Outline)
	x += 30
	for _, p := range parts {
		if p.Series {
			drawSeries(d, x, p)
			x += 38
			continue
		}
		drawAcross(d, x, p)
		x += 88
	}
	d.Line(calc.Point{X: 296, Y: railTop}, calc.Point{X: 296, Y: railBase}, calc.Outline)
	d.Rect(calc.Point{X: 288, Y: 62}, 16, 40, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 312, Y: railBase + 16}, calc.End, "load "+load)
}

// drawSeries draws a part in the upper rail, its value above.
func drawSeries(d *calc.Drawing, x float64, p Part) {
	if p.Coil {
		drawCoil(d, calc.Point{X: x, Y: railTop}, 36)
	} else {
		d.Rect(calc.Point{X: x - 3, Y: railTop - 3}, 6, 6, calc.Bare, calc.Paper)
		for _, side := range [...]float64{-3, 3} {
			d.Line(calc.Point{X: x + side, Y: railTop - 11}, calc.Point{X: x + side, Y: railTop + 11}, calc.Outline)
		}
	}
	d.Text(calc.Point{X: x, Y: railTop - 20}, calc.Middle, showPart(p))
}

// drawAcross draws a part between the rails, its value beside.
func drawAcross(d *calc.Drawing, x float64, p Part) {
	const middle = (railTop + railBase) / 2
	d.Line(calc.Point{X: x, Y: railTop}, calc.Point{X: x, Y: railBase}, calc.Outline)
	if p.Coil {
		const r = 4.5
		d.Rect(calc.Point{X: x - 2, Y: middle - 4*r}, 4, 8*r, calc.Bare, calc.Paper)
		for i := range 4 {
			d.Arc(calc.Point{X: x, Y: middle + r*float64(2*i-3)}, r, -math.Pi/2, math.Pi/2, calc.Outline)
		}
	} else {
		d.Rect(calc.Point{X: x - 3, Y: middle - 3}, 6, 6, calc.Bare, calc.Paper)
		for _, side := range [...]float64{-3, 3} {
			d.Line(calc.Point{X: x - 11, Y: middle + side}, calc.Point{X: x + 11, Y: middle + side}, calc.Outline)
		}
	}
	d.Text(calc.Point{X: x + 13, Y: middle + 4}, calc.Start, showPart(p))
}
