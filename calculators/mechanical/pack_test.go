package mechanical

import (
	"math"
	"math/rand/v2"
	"testing"

	"baybook/calculators/calc"
)

// bestKnown are the ratios R/r of the best known packings of equal circles in
// a circle, Discrete Mathematics 181 (1998) 139–154, which lists up to 65 of
// them (digits from memory).
var bestKnown = map[int]float64{
	1: 1, 2: 2, 3: 1 + 2/math.Sqrt(3), 4: 1 + math.Sqrt2, 5: 2.7013, 6: 3, 7: 3, 8: 3.3048, 9: 3.6131, 10: 3.8130,
	11: 3.9238, 12: 4.0296, 13: 4.2361, 14: 4.3284, 15: 4.5214, 16: 4.6154, 17: 4.7920,
	18: 1 + math.Sqrt2 + math.Sqrt(6), 19: 1 + math.Sqrt2 + math.Sqrt(6), 20: 5.122321,
	21: 5.252317, 22: 5.439719, 23: 5.545204, 24: 5.651661, 25: 5.752824, 26: 5.828177, 27: 5.906398, 28: 6.014938, 29: 6.138598,
	30: 6.197741, 31: 6.291502, 32: 6.429463, 33: 6.486703, 34: 6.610957, 35: 6.697171, 36: 6.746754, 37: 6.758774,
}

func equal(n int, r float64) []float64 {
	radii := make([]float64, n)
	for i := range radii {
		radii[i] = r
	}
	return radii
}

func TestEqualWiresPackAsBestKnown(t *testing.T) {
	for n, want := range bestKnown {
		discs, around := Pack(equal(n, 1.2))
		sound(t, discs, around)
		if got := around / 1.2; math.Abs(got-want) > 2e-5*want {
			t.Errorf("%d circles: R/r %.5f, best known %.4f", n, got, want)
		}
	}
}

// sound demands that no discs overlap and that the circle holds them all.
func sound(t *testing.T, discs []Disc, around float64) {
	t.Helper()
	for i, a := range discs {
		if math.Hypot(a.X, a.Y)+a.R > around*(1+1e-9) {
			t.Errorf("disc %d of %d stands out of the circle", i, len(discs))
		}
		for j, b := range discs[:i] {
			if gap := math.Hypot(a.X-b.X, a.Y-b.Y) - a.R - b.R; gap < -1e-9*around {
				t.Errorf("discs %d and %d of %d overlap by %g", i, j, len(discs), -gap)
			}
		}
	}
}

func TestMixedWires(t *testing.T) {
	source := rand.New(rand.NewPCG(1, 2))
	for range 12 {
		n := 2 + source.IntN(40)
		radii := make([]float64, n)
		area, most := 0.0, 0.0
		for i := range radii {
			radii[i] = 0.3 + 3*source.Float64()
			area += radii[i] * radii[i]
			most = math.Max(most, radii[i])
		}
		discs, around := Pack(radii)
		sound(t, discs, around)
		if around < math.Sqrt(area) || around < most {
			t.Errorf("%d wires: circle %g is below what their area needs", n, around)
		}
		// Scale: wires in inches make the same packing as in millimeters.
		scaled := make([]float64, n)
		for i, r := range radii {
			scaled[n-1-i] = r / 25.4
		}
		if _, other := Pack(scaled); math.Abs(other*25.4-around) > 1e-9*around {
			t.Errorf("%d wires: %g in another unit and order, %g", n, other*25.4, around)
		}
	}
}

// The example of the mechanical reference: 4 × 2.0, 2 × 3.0 and 1 × 6.1 mm is
// 10.126 mm by the 1.2 rule (computed).
func TestEstimateOfMixedBundle(t *testing.T) {
	_, r, problems := BundleSize.Answer([]calc.Pair{{Key: "wires", Value: "4x2.0,2x3.0,1x6.1"}})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := r.Num("estimate"); math.Abs(got-10.126) > 5e-4 {
		t.Errorf("estimate %g, want 10.126", got)
	}
}

func BenchmarkBundleOfSixty(b *testing.B) {
	radii := equal(60, 1.2)
	for i := range radii {
		radii[i] += 0.01 * float64(i%7)
	}
	for b.Loop() {
		Pack(radii)
	}
}

// TestSmallBesideLarge: many thin wires share the crescent beside a thick one
// instead of lying all around it, where the circle would be two of them larger.
func TestSmallBesideLarge(t *testing.T) {
	radii := append(equal(59, 0.15), 30)
	discs, around := Pack(radii)
	sound(t, discs, around)
	if around > 30.25 {
		t.Errorf("59 thin wires beside a thick one: circle %g, want less than 30.3, which all around takes", around)
	}
}

// TestFirstPacking: what a search shows after its first step is sound and near
// what it ends with, and it ends with what Pack gives.
func TestFirstPacking(t *testing.T) {
	radii := equal(60, 1.2)
	for i := range radii {
		radii[i] += 0.01 * float64(i%7)
	}
	p := NewPacking(radii)
	p.Step()
	first, around := p.Discs()
	sound(t, first, around)
	for p.Step() {
	}
	last, final := p.Discs()
	sound(t, last, final)
	if around > 1.03*final || around < final*(1-1e-12) {
		t.Errorf("first circle %g, last %g", around, final)
	}
	if _, whole := Pack(radii); whole != final {
		t.Errorf("Pack gives %g, steps end at %g", whole, final)
	}
}

// BenchmarkFirstPacking is what a key costs before anything is shown.
func BenchmarkFirstPacking(b *testing.B) {
	radii := equal(60, 1.2)
	for i := range radii {
		radii[i] += 0.01 * float64(i%7)
	}
	for b.Loop() {
		p := NewPacking(radii)
		p.Step()
		p.Discs()
	}
}
