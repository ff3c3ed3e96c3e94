package calc

import "math"

// Labels writes the labels of places in a drawing: each near its place and
// none over another, whatever the inputs are.
type Labels struct {
	d     *Drawing
	frame box
	taken []box
}

// A box is an area of a drawing.
type box struct{ left, top, right, base float64 }

func (a box) meets(b box) bool {
	return a.left < b.right && b.left < a.right && a.top < b.base && b.top < a.base
}

func (a box) holds(b box) bool {
	return a.left <= b.left && a.top <= b.top && a.right >= b.right && a.base >= b.base
}

// NewLabels starts labeling the part of a drawing whose upper left corner is
// at.
func NewLabels(d *Drawing, at Point, width, height float64) *Labels {
	return &Labels{d: d, frame: box{at.X, at.Y, at.X + width, at.Y + height}}
}

// Keep keeps an area free of lettering.
func (l *Labels) Keep(at Point, width, height float64) {
	l.taken = append(l.taken, box{at.X, at.Y, at.X + width, at.Y + height})
}

// KeepLine keeps lettering off a line.
func (l *Labels) KeepLine(a, b Point) {
	n := math.Ceil(math.Hypot(b.X-a.X, b.Y-a.Y)/4) + 1
	for i := 0.0; i <= n; i++ {
		p := Point{a.X + (b.X-a.X)*i/n, a.Y + (b.Y-a.Y)*i/n}
		l.Keep(Point{p.X - 2, p.Y - 2}, 4, 4)
	}
}

// Put labels a place: beside it where there is room, else further off with a
// thin line back to it.
func (l *Labels) Put(place Point, text string) {
	const near, directions = 7.0, 16
	w, h := TextWidth(text, TextSize)+4, TextSize+3
	for _, r := range [...]float64{near, 11, 18, 28, 40, 54, 70, 90, 115, 145, 180} {
		for i := range directions {
			a := 2 * math.Pi * float64(i) / directions
			at := beside(place, r, a, w, h)
			if l.frame.holds(at) && !l.overlaps(at) {
				l.draw(place, at, text, r > 18)
				return
			}
		}
	}
	x := math.Max(l.frame.left, math.Min(place.X, l.frame.right-w))
	l.draw(place, box{x, place.Y, x + w, place.Y + h}, text, false)
}

// beside is a box whose nearest edge is r from a place in the direction a.
func beside(place Point, r, a, w, h float64) box {
	c, s := math.Cos(a), math.Sin(a)
	x, y := place.X+c*(r+w/2), place.Y-s*(r+h/2)
	return box{x - w/2, y - h/2, x + w/2, y + h/2}
}

func (l *Labels) overlaps(b box) bool {
	for _, t := range l.taken {
		if t.meets(b) {
			return true
		}
	}
	return false
}

func (l *Labels) draw(place Point, b box, text string, far bool) {
	if far {
		to := Point{math.Max(b.left, math.Min(place.X, b.right)), math.Max(b.top, math.Min(place.Y, b.base))}
		l.d.Line(place, to, Thin)
	}
	l.d.Label(Point{(b.left + b.right) / 2, b.top + TextSize}, Middle, text)
	l.taken = append(l.taken, b)
}
