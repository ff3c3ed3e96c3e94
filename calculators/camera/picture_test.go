package camera

import (
	"math"
	"testing"

	"baybook/calculators/calc"
)

// What is left of a curve passes within a tenth of a px of all of it.
func TestThinnedStaysOnTheCurve(t *testing.T) {
	for _, bend := range []float64{0, 0.5, 20, 400} {
		var curve []calc.Point
		for i := range 41 {
			x := 8 * float64(i)
			curve = append(curve, calc.Point{X: x, Y: bend * math.Sin(x/60)})
		}
		kept := thinned(curve)
		if kept[0] != curve[0] || kept[len(kept)-1] != curve[len(curve)-1] || bend == 0 && len(kept) != 2 || bend == 0.5 && len(kept) > len(curve)/2 {
			t.Errorf("bend %g: %d points are left of %d", bend, len(kept), len(curve))
		}
		for _, p := range curve {
			if off := distance(p, kept); off > 0.1+1e-9 {
				t.Errorf("bend %g: %v lies %g px off what is left", bend, p, off)
			}
		}
	}
}

// distance is from a point to the nearest of the lines between points.
func distance(p calc.Point, line []calc.Point) float64 {
	least := math.Inf(1)
	for i := range line[1:] {
		a, b := line[i], line[i+1]
		dx, dy := b.X-a.X, b.Y-a.Y
		along := math.Max(0, math.Min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/(dx*dx+dy*dy)))
		least = math.Min(least, math.Hypot(p.X-a.X-along*dx, p.Y-a.Y-along*dy))
	}
	return least
}
