package camera

import (
	"math"

	"baybook/calculators/calc"
)

// The cylinders of the rule, in m.
const (
	postRadius = 0.15
	postTall   = 0.8
)

// A Post is where a cylinder of the rule stands: the place of its axis on the
// floor, in m.
type Post struct{ X, Y float64 }

// A pane is the flat upright rectangle for which a post stands: between the
// two lines where planes through the lens touch it, in the camera's axes.
type pane struct {
	away, across, up vec     // unit vectors: level towards the post, to its right, upwards
	far, half        float64 // m from the lens to the plane, half the width in it
	lens             float64 // m from the floor to the lens
}

func (c Camera) pane(p Post) pane {
	x, y := p.X-c.X, p.Y-c.Y
	axis := math.Hypot(x, y)
	touch := math.Sqrt((axis - postRadius) * (axis + postRadius)) // level, from the lens to a touching line
	return pane{
		away: c.turn(x/axis, y/axis, 0), across: c.turn(y/axis, -x/axis, 0), up: c.turn(0, 0, 1),
		far: touch * touch / axis, half: touch * postRadius / axis, lens: c.Height,
	}
}

// at is a place on the pane, so far right of its middle and above the floor.
func (o pane) at(across, above float64) vec {
	return vec{}.plus(o.far, o.away).plus(across, o.across).plus(above-o.lens, o.up)
}

// hit is where a direction meets the pane's plane, with its slopes where the
// direction has a slope.
func (o pane) hit(d, slope vec) (across, above, acrossSlope, aboveSlope float64) {
	ahead, aheadSlope := o.away.dot(d), o.away.dot(slope)
	across, above = o.across.dot(d)/ahead, o.up.dot(d)/ahead
	return o.far * across, o.lens + o.far*above,
		o.far * (o.across.dot(slope) - across*aheadSlope) / ahead,
		o.far * (o.up.dot(slope) - above*aheadSlope) / ahead
}

// planes are the planes through the lens and the pane's edges: bottom, right,
// top, left. A direction on the positive side of all meets the pane.
func (o pane) planes() [4]vec {
	corners := [4]vec{o.at(-o.half, 0), o.at(o.half, 0), o.at(o.half, postTall), o.at(-o.half, postTall)}
	middle := o.at(0, postTall/2)
	var planes [4]vec
	for i, a := range corners {
		n := a.cross(corners[(i+1)%4])
		planes[i] = vec{}.plus(math.Copysign(1/math.Sqrt(n.dot(n)), n.dot(middle)), n)
	}
	return planes
}

// corners are those of the picture in half widths and heights; its sides run
// from each to the next, counter-clockwise from the lower left: lower, right,
// upper, left.
var corners = [4][2]float64{{-1, 1}, {1, 1}, {1, -1}, {-1, -1}}

// side gives the direction that the lens maps to a place on a side of the
// picture, along being 0 at its start and 1 at its end, and the direction's
// slope along it.
func (c Camera) side(i int, along float64) (d, slope vec) {
	width, height := c.half()
	a, b := corners[i], corners[(i+1)%4]
	dx, dy := (b[0]-a[0])*width, (b[1]-a[1])*height
	x, y := a[0]*width+dx*along, a[1]*height+dy*along
	if c.Rectilinear {
		return vec{x, y, 1}, vec{dx, dy, 0}
	}
	theta := math.Hypot(x, y) // never 0 on a side
	sin, cos := math.Sincos(theta)
	s, turn := sin/theta, x*dx+y*dy
	q := (cos - s) / (theta * theta) * turn
	return vec{s * x, s * y, cos}, vec{s*dx + q*x, s*dy + q*y, -s * turn}
}

// edgeSlack is how far inside a pane's edges a side of the picture must run
// to count as crossing it; one that runs along an edge cuts nothing off.
const edgeSlack = 1e-12

// Seen is the share of a post's flat rectangle that is in the picture, by its
// own area, and the width in m of the widest strip across it that is seen at
// full height. The lens must be off the post.
//
// The seen part is bounded by pieces of the pane's edges and of the picture's
// sides, so its area is the sum of ∮ across·d(above) over them (Green), in
// which level edges count nothing and upright ones their seen length. Every
// piece begins and ends where a side of the picture crosses the plane through
// an edge of the pane.
func (c Camera) Seen(p Post) (share, strip float64) {
	o := c.pane(p)
	planes := o.planes()
	var area float64
	var cut [][2]float64                                  // stretches of the width that sides of the picture cut
	upright := [2][]float64{{0, postTall}, {0, postTall}} // where the right and the left edge may enter or leave
	for i := range corners {
		stops := []float64{0, 1}
		for j, plane := range planes {
			for _, t := range zeros(
				func(t float64) float64 { d, _ := c.side(i, t); return plane.dot(d) },
				func(t float64) float64 { _, slope := c.side(i, t); return plane.dot(slope) }) {
				stops = append(stops, t)
				if _, above, _, _ := o.hit(c.side(i, t)); j%2 == 1 && above > 0 && above < postTall {
					upright[j/2] = append(upright[j/2], above)
				}
			}
		}
		calc.SortNumbers(stops)
		for k := 1; k < len(stops); k++ {
			if from, to := stops[k-1], stops[k]; c.crosses(i, (from+to)/2, planes) {
				piece, low, high := c.piece(o, i, from, to)
				area += piece
				cut = append(cut, [2]float64{low, high})
			}
		}
	}
	for i, half := range [...]float64{o.half, -o.half} {
		area += o.half * c.seenLength(o, half, upright[i])
	}
	return math.Max(0, math.Min(1, area/(2*o.half*postTall))), c.strip(o, cut)
}

// crosses reports whether a side of the picture is inside the pane there.
func (c Camera) crosses(i int, along float64, planes [4]vec) bool {
	d, _ := c.side(i, along)
	for _, plane := range planes {
		if plane.dot(d) <= edgeSlack {
			return false
		}
	}
	return true
}

// piece gives ∮ across·d(above) along part of a side of the picture, and how
// far it reaches left and right on the pane.
func (c Camera) piece(o pane, i int, from, to float64) (area, low, high float64) {
	area = integrate(func(t float64) float64 {
		across, _, _, slope := o.hit(c.side(i, t))
		return across * slope
	}, from, to, 1e-13, 20)
	low, high = math.Inf(1), math.Inf(-1)
	turns := changes(func(t float64) float64 {
		_, _, slope, _ := o.hit(c.side(i, t))
		return slope
	}, from, to)
	for _, t := range append(turns, from, to) {
		across, _, _, _ := o.hit(c.side(i, t))
		low, high = math.Min(low, across), math.Max(high, across)
	}
	return area, low, high
}

// seenLength is how much of an upright line on the pane is in the picture,
// given where it may enter and leave.
func (c Camera) seenLength(o pane, across float64, stops []float64) float64 {
	calc.SortNumbers(stops)
	sum := 0.0
	for i := 1; i < len(stops); i++ {
		if c.sees(o.at(across, (stops[i-1]+stops[i])/2)) {
			sum += stops[i] - stops[i-1]
		}
	}
	return sum
}

// strip is the widest stretch that no side of the picture cuts and that is
// seen, which then is seen at full height.
func (c Camera) strip(o pane, cut [][2]float64) float64 {
	cut = append(cut, [2]float64{o.half, o.half})
	widest, from := 0.0, -o.half
	for _, i := range calc.Sorted(len(cut), func(i, j int) bool { return cut[i][0] < cut[j][0] }) {
		to := &cut[i]
		if gap := to[0] - from; gap > widest && c.sees(o.at((from+to[0])/2, postTall/2)) {
			widest = gap
		}
		from = math.Max(from, to[1])
	}
	return widest
}

// OnScreen is how far apart the two touching lines of a post are at mid-height
// on a screen of the given size over which the picture is stretched, in the
// screen's unit, whether or not inside it. It is false where one of them lands
// nowhere.
func (c Camera) OnScreen(p Post, width, height float64) (apart float64, ok bool) {
	o := c.pane(p)
	u1, v1, ok1 := c.place(o.at(-o.half, postTall/2))
	u2, v2, ok2 := c.place(o.at(o.half, postTall/2))
	return math.Hypot((u2-u1)*width/2, (v2-v1)*height/2), ok1 && ok2
}
