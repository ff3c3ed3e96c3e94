package audio

import (
	"math"

	"baybook/calculators/calc"
)

// checkBar is the length in mm of the bar by which a print is checked.
const checkBar = 100.0

// drawAdapterRing draws the ring at true size, one unit a millimeter, with a
// bar to check the print by. Lettering grows with the sheet, so that it is
// read on a phone too.
func drawAdapterRing(in *calc.Values, out *calc.Result) *calc.Drawing {
	outer, inner, circle, hole := in.Num("outer"), in.Num("inner"), in.Num("screw_circle"), in.Num("hole")
	most := math.Max(outer, circle+hole)
	width := math.Max(most, checkBar) + 20
	size := width * calc.TextSize / 320
	d := calc.NewDrawing(width, most+20+7*size, out.Fill("Template at true size: ring {outer} outside, {inner} inside, {screws} "+
		"holes of {hole} on {screw_circle}, {chord:4} from hole to hole; check bar 100 mm."))
	d.TrueSize = true
	c := calc.Point{X: width / 2, Y: 10 + most/2}
	reach := most/2 + 5
	d.Line(calc.Point{X: c.X - reach, Y: c.Y}, calc.Point{X: c.X + reach, Y: c.Y}, calc.Scribe)
	d.Line(calc.Point{X: c.X, Y: c.Y - reach}, calc.Point{X: c.X, Y: c.Y + reach}, calc.Scribe)
	d.Circle(c, outer/2, calc.Cut, calc.Empty)
	d.Circle(c, inner/2, calc.Cut, calc.Empty)
	d.Circle(c, circle/2, calc.Scribe, calc.Empty)
	n := in.Int("screws")
	for i := range n {
		sin, cos := math.Sincos(2*math.Pi*float64(i)/float64(n) - math.Pi/2)
		at := calc.Point{X: c.X + circle/2*cos, Y: c.Y + circle/2*sin}
		d.Circle(at, hole/2, calc.Cut, calc.Empty)
		d.Line(calc.Point{X: at.X - hole*cos, Y: at.Y - hole*sin}, calc.Point{X: at.X + hole*cos, Y: at.Y + hole*sin}, calc.Scribe)
	}
	drawCheckBar(d, calc.Point{X: (width - checkBar) / 2, Y: most + 20 + size}, size)
	base := most + 20 + 3.6*size
	for i, line := range [...]string{
		"{outer} outside, {inner} inside",
		"{screws} × {hole} on {screw_circle}",
		"hole to hole {chord}",
	} {
		d.TextSized(calc.Point{X: width / 2, Y: base + 1.3*size*float64(i)}, calc.Middle, size, out.Fill(line))
	}
	return d
}

// drawCheckBar draws 100 mm with a mark every 10 mm.
func drawCheckBar(d *calc.Drawing, at calc.Point, size float64) {
	d.Line(at, calc.Point{X: at.X + checkBar, Y: at.Y}, calc.Cut)
	for i := range 11 {
		x, high := at.X+10*float64(i), 2.0
		if i%5 == 0 {
			high = 4
		}
		d.Line(calc.Point{X: x, Y: at.Y - high}, calc.Point{X: x, Y: at.Y}, calc.Cut)
	}
	d.TextSized(calc.Point{X: at.X + checkBar/2, Y: at.Y + 1.1*size}, calc.Middle, size, "100 mm: check")
}
