package draw

import (
	"math"

	"baybook/calculators/calc"
)

// near is how close two points are that are one.
const near = 0.3

// holds reports a point on a line.
func (s segment) holds(p calc.Point) bool {
	return p.X >= math.Min(s.from.X, s.to.X)-near && p.X <= math.Max(s.from.X, s.to.X)+near &&
		p.Y >= math.Min(s.from.Y, s.to.Y)-near && p.Y <= math.Max(s.from.Y, s.to.Y)+near
}

func (s segment) endsAt(p calc.Point) bool { return same(s.from, p) || same(s.to, p) }

func same(a, b calc.Point) bool { return math.Abs(a.X-b.X) < near && math.Abs(a.Y-b.Y) < near }

// arms counts the directions in which something leads away from a point: lines
// that lie over each other count once.
func (k *sketch) arms(p calc.Point) int {
	var way [4]bool // right, left, down, up
	see := func(s segment) {
		if !s.holds(p) {
			return
		}
		way[0] = way[0] || math.Max(s.from.X, s.to.X) > p.X+near
		way[1] = way[1] || math.Min(s.from.X, s.to.X) < p.X-near
		way[2] = way[2] || math.Max(s.from.Y, s.to.Y) > p.Y+near
		way[3] = way[3] || math.Min(s.from.Y, s.to.Y) < p.Y-near
	}
	for _, list := range [...][]track{k.lines, k.wires, k.stubs} {
		for _, l := range list {
			see(l.segment)
		}
	}
	n := 0
	for _, w := range way {
		if w {
			n++
		}
	}
	return n
}

// joints puts a dot on every point at which three lines or more meet.
func (k *sketch) joints() {
	for _, list := range [...][]track{k.lines, k.wires} {
		for _, l := range list {
			for _, p := range [...]calc.Point{l.from, l.to} {
				if k.arms(p) >= 3 && !k.dotted(p) {
					k.d.Circle(p, 3.2, calc.Thin, calc.Ink)
					k.dots = append(k.dots, p)
				}
			}
		}
	}
}

func (k *sketch) dotted(p calc.Point) bool {
	for _, d := range k.dots {
		if same(d, p) {
			return true
		}
	}
	return false
}
