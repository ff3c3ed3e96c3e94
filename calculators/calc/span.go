package calc

import "math"

// Span draws a flat dimension line at height y from x1 to x2, arrows inside
// where there is room and outside where there is not. Its label stands above
// the line, moved sideways as far as it must to stay in the drawing.
func (d *Drawing) Span(x1, x2, y float64, label string) {
	if x1 > x2 {
		x1, x2 = x2, x1
	}
	if x2-x1 >= 3*arrowLength {
		d.Line(Point{x1, y}, Point{x2, y}, Thin)
		d.Arrow(Point{x2, y}, Point{x1, y})
		d.Arrow(Point{x1, y}, Point{x2, y})
	} else {
		out := 2 * arrowLength
		d.Line(Point{x1 - out, y}, Point{x2 + out, y}, Thin)
		d.Arrow(Point{x1 - out, y}, Point{x1, y})
		d.Arrow(Point{x2 + out, y}, Point{x2, y})
	}
	d.Label(Point{d.within((x1+x2)/2, label), y - 5}, Middle, label)
}

// TextWithin writes a text as near to centered on a point as the edges of the
// drawing allow.
func (d *Drawing) TextWithin(at Point, text string) {
	d.Text(Point{d.within(at.X, text), at.Y}, Middle, text)
}

// within moves the middle of a text so that it stays inside the drawing; one
// that is too long for it is centered.
func (d *Drawing) within(x float64, text string) float64 {
	half := math.Min(TextWidth(text, TextSize)/2+3, d.Width/2)
	return math.Max(half, math.Min(d.Width-half, x))
}
