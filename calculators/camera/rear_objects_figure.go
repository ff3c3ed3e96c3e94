package camera

import (
	"math"

	"baybook/calculators/calc"
)

// drawRearObjects draws the picture that the driver would see, mirrored as a
// reversing picture is shown, with a grid of meters on the floor.
func drawRearObjects(in *calc.Values, out *calc.Result) *calc.Drawing {
	c, _ := readRear(in)
	title := "The picture as the driver sees it, mirrored. In it of A {visible_a}, B {visible_b}, C {visible_c}, D {visible_d}, E {visible_e}, " +
		"F {visible_f}, G {visible_g}."
	if out.Get("angle_mean").Present {
		title += " A, B and C look {angle_mean} wide on average."
	}
	p := newPicture(c, in.Num("screen_width"), in.Num("screen_height"), 3, true, out.Fill(title))
	for x := -3.0; x <= 3; x++ {
		p.ground(x, 0, x, 3, calc.Thin)
		p.ground(x, 3, x, 10, calc.Thin)
	}
	for y := 1.0; y <= 10; y++ {
		p.ground(-3, y, 3, y, calc.Thin)
	}
	p.ground(-3, 0, 3, 0, calc.Outline)
	p.horizon()
	var missing, part string
	for i, post := range posts {
		p.post(c.pane(post))
		switch share := out.Num("visible_" + letters[i:i+1]); {
		case share == 0:
			add(&missing, i)
		case share < wholeShare:
			add(&part, i)
		}
	}
	p.frame()
	for i, post := range posts {
		if top, ok := p.top(c.pane(post)); ok {
			p.labels.Put(top, capital(i))
		}
	}
	p.below(1, "mirrored, as on the screen; floor grid 1 m")
	p.list(2, "cut off", part)
	p.list(3, "not in the picture", missing)
	return p.d
}

// list writes a line of text: what, then the letters of the posts in which; no
// line where there are none.
func (p *picture) list(n int, what, which string) {
	if which == "" {
		which = "none"
	}
	p.below(n, what+": "+which)
}

// post draws the seen part of a pane.
func (p *picture) post(o pane) {
	var points []calc.Point
	for _, v := range p.clipped(o) {
		points = append(points, p.at(v.right/v.ahead, v.down/v.ahead))
	}
	if len(points) > 2 {
		p.d.Polygon(points, calc.Bare, calc.Paper)
		p.d.Polygon(points, calc.Outline, calc.Shade)
	}
}

// top is where the letter of a post points to: the middle of its highest part
// in the picture.
func (p *picture) top(o pane) (calc.Point, bool) {
	left, right, top := math.Inf(1), math.Inf(-1), math.Inf(1)
	for _, v := range p.clipped(o) {
		at := p.at(v.right/v.ahead, v.down/v.ahead)
		left, right, top = math.Min(left, at.X), math.Max(right, at.X), math.Min(top, at.Y)
	}
	return calc.Point{X: (left + right) / 2, Y: top}, right > left
}

// clipped is the outline of a pane inside the picture. Its points are in half
// widths and heights once divided by ahead, which for a rectilinear lens is
// done only after clipping, so that what is behind the lens is cut off too.
func (p *picture) clipped(o pane) []vec {
	const steps = 8
	width, height := p.c.half()
	var outline []vec
	for i, a := range corners {
		b := corners[(i+1)%4]
		for t := 0.0; t < steps; t++ {
			x, y := a[0]+(b[0]-a[0])*t/steps, a[1]+(b[1]-a[1])*t/steps
			v := o.at(x*o.half, (1-y)/2*postTall)
			if p.c.Rectilinear {
				v.right, v.down = v.right/width, v.down/height
			} else {
				v.right, v.down, _ = p.c.place(v)
				v.ahead = 1
			}
			outline = append(outline, v)
		}
	}
	for _, side := range [...]vec{{1, 0, 1}, {-1, 0, 1}, {0, 1, 1}, {0, -1, 1}} {
		outline = clip(outline, side)
	}
	return outline
}

// clip keeps the part of an outline on the positive side of a plane through 0
// (Sutherland and Hodgman).
func clip(outline []vec, side vec) []vec {
	var kept []vec
	for i, b := range outline {
		a := outline[(i+len(outline)-1)%len(outline)]
		da, db := side.dot(a), side.dot(b)
		if da >= 0 != (db >= 0) {
			t := da / (da - db)
			kept = append(kept, vec{}.plus(1-t, a).plus(t, b))
		}
		if db >= 0 {
			kept = append(kept, b)
		}
	}
	return kept
}
