package mechanical

import (
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/calctest"
)

// TestProofLoads compares every proof load with ISO 898-1 coarse thread, N
// (from memory), printed there to three figures.
func TestProofLoads(t *testing.T) {
	table := []struct {
		thread string
		loads  [4]float64
	}{
		{"M3", [4]float64{1130, 1910, 2920, 4180}},
		{"M4", [4]float64{1980, 3340, 5100, 7290}},
		{"M5", [4]float64{3200, 5400, 8230, 11800}},
		{"M6", [4]float64{4520, 7640, 11600, 16700}},
		{"M8", [4]float64{8240, 13900, 21200, 30400}},
		{"M10", [4]float64{13000, 22000, 33700, 48100}},
		{"M12", [4]float64{19000, 32000, 48900, 70000}},
	}
	for _, row := range table {
		for i, class := range Classes[:4] {
			r := compute(t, BoltTorque, "thread="+row.thread+"&class="+class.Name)
			if got := 1e3 * r.Num("proof_load"); !near(got, row.loads[i], 8e-3) {
				t.Errorf("%s %s: proof load %.0f N, want %.0f N", row.thread, class.Name, got, row.loads[i])
			}
		}
	}
}

// TestTorqueIsLinear doubles the nut factor and the share.
func TestTorqueIsLinear(t *testing.T) {
	one := compute(t, BoltTorque, "k=0.1&share=40%25").Num("torque")
	for _, query := range []string{"k=0.2&share=40", "k=0.1&share=80"} {
		if got := compute(t, BoltTorque, query).Num("torque"); !near(got, 2*one, 1e-12) {
			t.Errorf("%s: %g Nm, want twice %g Nm", query, got, one)
		}
	}
}

func TestEvenHole(t *testing.T) {
	for _, c := range []struct{ size, want float64 }{
		{10, 10}, {10.000000001, 10}, {9.999999999, 10}, {10.0001, 12}, {0.5, 2}, {141.42, 142}, {0.1 + 0.2 + 5.7, 6},
	} {
		if got := EvenHole(c.size); got != c.want {
			t.Errorf("%g mm: hole %g mm, want %g mm", c.size, got, c.want)
		}
	}
	r := rand.New(rand.NewPCG(3, 3))
	for range 1000 {
		size := 1 + 140*r.Float64()
		hole := EvenHole(size)
		if math.Mod(hole, 2) != 0 || hole < size*(1-1e-8) || hole >= size+2 {
			t.Fatalf("%g mm: hole %g mm", size, hole)
		}
	}
}

// TestTubeSize walks through all parts: the tube slides on, and none smaller
// would; the ratio that a stop names does grip.
func TestTubeSize(t *testing.T) {
	for over := 0.5; over <= 84; over += 0.1 {
		size := TubeSize(over)
		if math.IsNaN(size) || size < 1.2*over*(1-1e-8) {
			t.Fatalf("over %g mm: tube %g mm", over, size)
		}
		for _, smaller := range tubeSizes {
			if smaller < size && smaller >= 1.2*over {
				t.Fatalf("over %g mm: tube %g mm, and %g mm would do", over, size, smaller)
			}
		}
	}
	for _, c := range []struct{ query, want string }{
		{"over=8&grip=4&ratio=2", "ratio of 4"}, {"over=8&grip=6&ratio=2", "ratio of 3"}, {"over=80&grip=1&ratio=4", "no ratio"},
	} {
		r := compute(t, ShrinkTube, c.query)
		if r.Verdict != calc.Stop || !strings.Contains(strings.Join(r.Reasons, " "), c.want) {
			t.Errorf("%s: %v, %q, want a stop that says %q", c.query, r.Verdict, r.Reasons, c.want)
		}
	}
}

// TestThreads compares every drill with ISO 273 (from memory) by its rule of
// thumb, close < medium < free, and the tap hole leaves three quarters of the
// thread, 76.98·(D − drill)/P % (machinists' handbook, from memory).
func TestThreads(t *testing.T) {
	for _, thread := range Threads {
		r := compute(t, DrillSize, "thread="+thread.Name)
		tap, fine, medium, coarse := r.Num("tap"), r.Num("close"), r.Num("medium"), r.Num("free")
		if !(thread.Diameter < fine && fine < medium && medium < coarse) {
			t.Errorf("%s: clearance holes %g, %g, %g mm", thread.Name, fine, medium, coarse)
		}
		// Tap charts of inch threads aim at about 75 % of the thread.
		share := 76.98 * (thread.Diameter - tap) / thread.Pitch
		if thread.Inch() && (share < 68 || share > 82) || !thread.Inch() && !near(share, 76.98, 1e-9) {
			t.Errorf("%s: a tap hole of %g mm leaves %g %% of the thread", thread.Name, tap, share)
		}
	}
}

func fuzz(f *testing.F, c *calc.Calculator) {
	r := rand.New(rand.NewPCG(7, 8))
	f.Add("")
	for range 4 {
		f.Add(calctest.RandomQuery(r, c))
	}
	f.Fuzz(func(t *testing.T, query string) {
		if err := calctest.Sound(c, query); err != nil {
			t.Error(err)
		}
		if err := calctest.CheckFigure(c, query); err != nil {
			t.Error(err)
		}
	})
}

func FuzzHingeSlack(f *testing.F) { fuzz(f, HingeSlack) }
func FuzzBoltTorque(f *testing.F) { fuzz(f, BoltTorque) }
func FuzzPassHole(f *testing.F)   { fuzz(f, PassHole) }
func FuzzShrinkTube(f *testing.F) { fuzz(f, ShrinkTube) }
func FuzzDrillSize(f *testing.F)  { fuzz(f, DrillSize) }
func FuzzBundle(f *testing.F)     { fuzz(f, BundleSize) }
