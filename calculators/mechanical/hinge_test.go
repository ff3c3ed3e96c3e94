package mechanical

import (
	"math"
	"math/rand/v2"
	"testing"

	"baybook/calculators/calc"
)

// compute answers a query that must compute.
func compute(t *testing.T, c *calc.Calculator, query string) *calc.Result {
	t.Helper()
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		t.Fatal(msg)
	}
	_, r, problems := c.Answer(pairs)
	if r == nil {
		t.Fatalf("%s?%s: %v", c.Name, query, problems)
	}
	return r
}

func near(got, want, tolerance float64) bool {
	return math.Abs(got-want) <= tolerance*math.Max(math.Abs(got), math.Abs(want))
}

// TestSwingByWalking opens doors a little at a time, with the clips as points
// of the plane, and never finds them nearer or further apart than SwingOf says.
func TestSwingByWalking(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for range 300 {
		body, door := 5+495*r.Float64(), 5+495*r.Float64()
		closed, swing := 180*r.Float64(), 5+175*r.Float64()
		s := SwingOf(body, door, closed, swing)
		longest, shortest := 0.0, math.Inf(1)
		const steps = 4000
		for i := 0; i <= steps; i++ {
			a := (closed + swing*float64(i)/steps) * math.Pi / 180
			d := math.Hypot(door*math.Cos(a)-body, door*math.Sin(a))
			longest, shortest = math.Max(longest, d), math.Min(shortest, d)
		}
		if !near(s.Shortest, shortest, 1e-9) || longest > s.Longest*(1+1e-12) || longest < s.Longest*(1-1e-6) {
			t.Fatalf("clips %g and %g from the axis, %g + %g degrees: %+v, walking found %g to %g",
				body, door, closed, swing, s, shortest, longest)
		}
	}
}

// TestArcRadius bends an arc back: its chord is 2R·sin(length/2R) by plane
// geometry, and the known arcs are a half and a whole circle.
func TestArcRadius(t *testing.T) {
	for _, known := range []struct{ gap, radius float64 }{
		{2 / math.Pi, 1 / math.Pi}, {0, 1 / (2 * math.Pi)}, {3 * math.Sqrt(3) / (4 * math.Pi), 3 / (4 * math.Pi)},
	} {
		if got := ArcRadius(1, known.gap); !near(got, known.radius, 1e-12) {
			t.Errorf("an arc of 1 over a gap of %g has the radius %.15g, want %.15g", known.gap, got, known.radius)
		}
	}
	r := rand.New(rand.NewPCG(2, 2))
	last := 0.0
	for i := range 1000 {
		length := 1 + 1000*r.Float64()
		gap := length / 1.05 * float64(i) / 999
		radius := ArcRadius(length, gap)
		if chord := 2 * radius * math.Sin(length/(2*radius)); math.Abs(chord-gap) > 1e-11*length {
			t.Errorf("arc of %g, radius %g: chord %g, want %g", length, radius, chord, gap)
		}
		if radius/length < last {
			t.Errorf("a wider gap bends more: %g of the length at %g", radius/length, gap/length)
		}
		last = radius / length
	}
}

// TestHingeUnits gives one hinge in two systems of units, and in two sizes.
func TestHingeUnits(t *testing.T) {
	mm := compute(t, HingeSlack, "body=50.8&door=101.6&closed_angle=100&swing=120&wire=5.08")
	in := compute(t, HingeSlack, "body=2in&door=4in&closed_angle=6000arcmin&swing=120&wire=0.2in")
	big := compute(t, HingeSlack, "body=101.6&door=203.2&closed_angle=100&swing=120&wire=10.16")
	for i, a := range mm.Outputs {
		if !near(a.Num, in.Outputs[i].Num, 1e-12) || !near(2*a.Num, big.Outputs[i].Num, 1e-12) {
			t.Errorf("%s: %g mm, in inches %g, twice as large %g", HingeSlack.Outputs[i].Name, a.Num, in.Outputs[i].Num, big.Outputs[i].Num)
		}
	}
	if want := 50.8 + 101.6; !near(mm.Num("longest"), want, 1e-12) {
		t.Errorf("a swing past 180 degrees reaches %g mm, want both arms in line, %g mm", mm.Num("longest"), want)
	}
}

// TestHingeVerdict sits on both sides of the least radius.
func TestHingeVerdict(t *testing.T) {
	r := compute(t, HingeSlack, "wire=1")
	least := r.Num("bend_radius")
	for _, c := range []struct {
		factor float64
		want   calc.Verdict
	}{{least / 4, calc.OK}, {least / 4 * 1.001, calc.Stop}} {
		query := "wire=4&bend_factor=" + calc.Format(c.factor, 15)
		if got := compute(t, HingeSlack, query); got.Verdict != c.want {
			t.Errorf("%s: %v, want %v", query, got.Verdict, c.want)
		}
	}
}
