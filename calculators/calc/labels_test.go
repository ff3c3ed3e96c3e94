package calc_test

import (
	"math/rand/v2"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/calctest"
)

// TestLabels crowds places together: every label is lettered, inside the
// drawing and over no other.
func TestLabels(t *testing.T) {
	for seed := range uint64(40) {
		c := *lamp
		c.Figure = func(*calc.Values, *calc.Result) *calc.Drawing {
			d := calc.NewDrawing(320, 240, "crowded")
			labels := calc.NewLabels(d, calc.Point{}, 320, 240)
			labels.Keep(calc.Point{X: 100, Y: 100}, 40, 40)
			labels.KeepLine(calc.Point{X: 0, Y: 200}, calc.Point{X: 320, Y: 180})
			r := rand.New(rand.NewPCG(seed, 1))
			for range 12 {
				labels.Put(calc.Point{X: 60 + 30*r.Float64(), Y: 60 + 30*r.Float64()}, "12.5 mm")
			}
			return d
		}
		if err := calctest.CheckFigure(&c, ""); err != nil {
			t.Errorf("seed %d: %v", seed, err)
		}
	}
}
