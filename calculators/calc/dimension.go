package calc

import "math"

// arrowLength is how long a dimension's arrow head is, in pixels.
const arrowLength = 7.0

// Arrow draws a solid head at tip, pointing away from tail.
func (d *Drawing) Arrow(tail, tip Point) {
	length := math.Hypot(tip.X-tail.X, tip.Y-tail.Y)
	if length == 0 {
		return
	}
	ux, uy := (tip.X-tail.X)/length, (tip.Y-tail.Y)/length
	base := Point{tip.X - arrowLength*ux, tip.Y - arrowLength*uy}
	d.Polygon([]Point{tip, {base.X - 2.2*uy, base.Y + 2.2*ux}, {base.X + 2.2*uy, base.Y - 2.2*ux}}, Thin, Ink)
}

// Dimension draws a dimension from a to b, moved sideways by offset (to the
// left of the way from a to b where it is positive), with extension lines,
// arrows at both ends and its label in the middle.
func (d *Drawing) Dimension(a, b Point, offset float64, label string) {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return
	}
	ux, uy := (b.X-a.X)/length, (b.Y-a.Y)/length
	nx, ny := uy, -ux
	a2 := Point{a.X + offset*nx, a.Y + offset*ny}
	b2 := Point{b.X + offset*nx, b.Y + offset*ny}
	if offset != 0 {
		over := math.Copysign(4, offset)
		d.Line(a, Point{a2.X + over*nx, a2.Y + over*ny}, Thin)
		d.Line(b, Point{b2.X + over*nx, b2.Y + over*ny}, Thin)
	}
	if length >= 3*arrowLength {
		d.Line(a2, b2, Thin)
		d.Arrow(b2, a2)
		d.Arrow(a2, b2)
	} else { // too short for arrows inside: they point in from outside
		out := 2 * arrowLength
		d.Line(Point{a2.X - out*ux, a2.Y - out*uy}, Point{b2.X + out*ux, b2.Y + out*uy}, Thin)
		d.Arrow(Point{a2.X - out*ux, a2.Y - out*uy}, a2)
		d.Arrow(Point{b2.X + out*ux, b2.Y + out*uy}, b2)
	}
	d.dimensionLabel(a2, b2, length, offset, label)
}

// dimensionLabel labels a dimension: over its line where it lies flat and is
// long enough, else beside it.
func (d *Drawing) dimensionLabel(a, b Point, length, offset float64, label string) {
	middle := Point{(a.X + b.X) / 2, (a.Y + b.Y) / 2}
	if math.Abs(b.X-a.X) >= math.Abs(b.Y-a.Y) { // flat
		up := -5.0
		if (offset > 0) != (b.X > a.X) && offset != 0 {
			up = TextSize + 2
		}
		d.Label(Point{middle.X, middle.Y + up}, Middle, label)
		return
	}
	side, anchor := 6.0, Start
	if (offset > 0) == (b.Y < a.Y) && offset != 0 {
		side, anchor = -6, End
	}
	d.Label(Point{middle.X + side, middle.Y + TextSize/3}, anchor, label)
}

// Leader writes a note and points from it to a place.
func (d *Drawing) Leader(to, at Point, a Anchor, label string) {
	d.Line(at, to, Thin)
	d.Arrow(at, to)
	x := at.X + 3
	if a == End {
		x = at.X - 3
	}
	d.Text(Point{x, at.Y + TextSize/3}, a, label)
}
