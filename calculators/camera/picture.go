package camera

import (
	"math"

	"baybook/calculators/calc"
)

// A picture is what a camera shows, drawn with its screen's proportions.
type picture struct {
	d                  *calc.Drawing
	c                  Camera
	middle             calc.Point
	halfWide, halfHigh float64 // px; halfWide is negative where the picture is mirrored
	labels             *calc.Labels
	base               float64 // y from which the text below stands
}

// newPicture frames a picture of the given proportions in a drawing with
// some lines of text below.
func newPicture(c Camera, wide, high float64, lines int, mirrored bool, title string) *picture {
	scale := math.Min(308/wide, 200/high)
	p := &picture{c: c, halfWide: wide * scale / 2, halfHigh: high * scale / 2}
	tall := math.Max(2*p.halfHigh+12, 130)
	p.middle = calc.Point{X: 160, Y: tall / 2}
	p.d = calc.NewDrawing(320, tall+18*float64(lines)+4, title)
	p.labels = calc.NewLabels(p.d, calc.Point{X: 2, Y: 2}, 316, tall-4)
	p.base = tall
	if math.Min(p.halfWide, p.halfHigh) < 20 { // lettering would hide it
		p.labels.Keep(p.at(-1, -1), 2*p.halfWide, 2*p.halfHigh)
	}
	if mirrored {
		p.halfWide = -p.halfWide
	}
	return p
}

// at maps a place in the picture to the drawing.
func (p *picture) at(u, v float64) calc.Point {
	return calc.Point{X: p.middle.X + u*p.halfWide, Y: p.middle.Y + v*p.halfHigh}
}

// frame draws the edge of the picture.
func (p *picture) frame() {
	wide := math.Abs(p.halfWide)
	p.d.Rect(calc.Point{X: p.middle.X - wide, Y: p.middle.Y - p.halfHigh}, 2*wide, 2*p.halfHigh, calc.Outline, calc.Empty)
}

// below writes the n-th line of text under the picture.
func (p *picture) below(n int, text string) {
	p.d.TextWithin(calc.Point{X: 160, Y: p.base + 18*float64(n) - 4}, text)
}

// curve draws the part that the camera sees of a line in the vehicle's axes,
// along from 0 to 1.
func (p *picture) curve(line func(along float64) vec, s calc.Stroke) {
	const steps = 40
	var run []calc.Point
	add := func(along float64) {
		if u, v, ok := p.c.place(line(along)); ok {
			run = append(run, p.at(u, v))
		}
	}
	inside := func(along float64) float64 {
		if p.c.sees(line(along)) {
			return 1
		}
		return -1
	}
	last := -1.0
	for i := 0.0; i <= steps; i++ {
		now := inside(i / steps)
		if i > 0 && now != last { // where it crosses the edge
			add(root(inside, (i-1)/steps, i/steps))
		}
		if now > 0 {
			add(i / steps)
		}
		if now < 0 && last > 0 || now > 0 && i == steps {
			p.d.Polyline(thinned(run), s)
			run = nil
		}
		last = now
	}
}

// thinned leaves out the points of a curve without which it stays where it is,
// to a tenth of a px.
func thinned(points []calc.Point) []calc.Point {
	const most = 0.1
	if len(points) < 3 {
		return points
	}
	kept := []calc.Point{points[0]}
	from := 0
	for to := 2; to < len(points); to++ {
		a, b := points[from], points[to]
		long := math.Hypot(b.X-a.X, b.Y-a.Y)
		for _, p := range points[from+1 : to] {
			if off := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X); math.Abs(off) > most*long {
				from = to - 1
				kept = append(kept, points[from])
				break
			}
		}
	}
	return append(kept, points[len(points)-1])
}

// ground draws a straight line on the floor.
func (p *picture) ground(x1, y1, x2, y2 float64, s calc.Stroke) {
	p.curve(func(along float64) vec {
		return p.c.turn(x1+(x2-x1)*along-p.c.X, y1+(y2-y1)*along-p.c.Y, -p.c.Height)
	}, s)
}

// horizon draws where the floor ends, were it endless.
func (p *picture) horizon() {
	p.curve(func(along float64) vec {
		sin, cos := math.Sincos((2*along - 1) * math.Pi)
		return p.c.turn(sin, cos, 0)
	}, calc.Hidden)
}
