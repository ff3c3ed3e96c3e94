package camera

import (
	"math"
	"strconv"

	"baybook/calculators/calc"
)

const (
	planHalf = 64.0 // px drawn to either side of the centerline
	planRoom = 52.0 // px under that for words
)

// A groundPlan is the ground from above, back to the right, to a scale of its
// own: a wide view keeps its shape beside the section.
type groundPlan struct {
	d             *calc.Drawing
	middle, scale float64 // y of the centerline, px a m
}

// newGroundPlan takes the section's scale, or a smaller one where half the
// width that is to be marked, in m, would not fit; 0 is none.
func newGroundPlan(d *calc.Drawing, middle, scale, width float64) groundPlan {
	if width > 0 {
		scale = math.Min(scale, 0.8*planHalf/(width/2))
	}
	return groundPlan{d, middle, scale}
}

func (g groundPlan) at(y, aside float64) calc.Point {
	return calc.Point{X: groundLeft + y*g.scale, Y: g.middle + aside*g.scale}
}

// draw draws the ground seen from near to far. Edges end where the drawing
// does; what goes on beyond it has no edge there.
func (g groundPlan) draw(c Camera, near, far float64) {
	end := groundLong / g.scale
	to := math.Min(far, end)
	if near < to {
		const steps = 72
		var left, right []calc.Point // the sides, held to the drawing
		var sides [2][]calc.Point    // what of them is inside it
		for i := 0.0; i <= steps; i++ {
			y := near + (to-near)*i/steps
			half := c.GroundWidth(y) / 2
			inside := half*g.scale <= planHalf
			half = math.Min(half, planHalf/g.scale)
			left, right = append(left, g.at(y, -half)), append(right, g.at(y, half))
			if inside {
				sides[0], sides[1] = append(sides[0], g.at(y, -half)), append(sides[1], g.at(y, half))
			}
		}
		outline := append([]calc.Point(nil), left...)
		for i := range right {
			outline = append(outline, right[len(right)-1-i])
		}
		g.d.Polygon(outline, calc.Bare, calc.Tint)
		for _, side := range sides {
			if len(side) > 1 {
				g.d.Polyline(side, calc.Outline)
			}
		}
		g.d.Line(left[0], right[0], calc.Outline)
		if far <= end {
			g.d.Line(left[len(left)-1], right[len(right)-1], calc.Outline)
		}
	}
	g.d.Line(calc.Point{X: 4, Y: g.middle}, calc.Point{X: 316, Y: g.middle}, calc.Center)
	g.d.Circle(g.at(0, 0), 4, calc.Outline, calc.Ink)
}

// across marks the width seen at y m, with its words under the plan.
func (g groundPlan) across(y, width float64, label string) {
	half := math.Min(width/2, planHalf/g.scale)
	g.d.Line(g.at(y, -half), g.at(y, half), calc.Heavy)
	g.d.TextWithin(calc.Point{X: g.at(y, 0).X, Y: g.middle + planHalf + 18}, label)
}

// lengths are those that a scale bar may stand for, in m.
var lengths = [...]float64{0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100}

// bar draws the plan's scale under it, and its name.
func (g groundPlan) bar() {
	const most = 90
	long := lengths[0]
	for _, l := range lengths {
		if l*g.scale <= most {
			long = l
		}
	}
	y := g.middle + planHalf + 42
	from, to := calc.Point{X: groundLeft, Y: y}, calc.Point{X: groundLeft + long*g.scale, Y: y}
	g.d.Line(from, to, calc.Outline)
	for _, p := range [...]calc.Point{from, to} {
		g.d.Line(calc.Point{X: p.X, Y: y - 4}, calc.Point{X: p.X, Y: y + 4}, calc.Outline)
	}
	g.d.Text(calc.Point{X: to.X + 8, Y: y + 4}, calc.Start, strconv.FormatFloat(long, 'f', -1, 64)+" m")
	g.d.Text(calc.Point{X: 316, Y: y + 4}, calc.End, "from above")
}
