package camera_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/calctest"
	"baybook/calculators/camera"
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

const deg = math.Pi / 180

// seen decides anew whether a camera at the origin of the ground sees a point:
// it turns the point into angles about the axis and lays them out on the
// picture by azimuth, without the code under test.
func seen(c camera.Camera, x, y, z float64) bool {
	x, y, z = x-c.X, y-c.Y, z-c.Height
	axis := [3]float64{0, math.Cos(c.Tilt), -math.Sin(c.Tilt)}
	up := [3]float64{0, math.Sin(c.Tilt), math.Cos(c.Tilt)}
	long := math.Sqrt(x*x + y*y + z*z)
	theta := math.Acos(max(-1, min(1, (y*axis[1]+z*axis[2])/long)))
	azimuth := math.Atan2(y*up[1]+z*up[2], x)
	law := func(theta float64) float64 { return theta }
	if c.Rectilinear {
		if theta >= math.Pi/2 {
			return false
		}
		law = math.Tan
	}
	r := law(theta)
	return math.Abs(r*math.Cos(azimuth)) <= law(c.HFOV/2) && math.Abs(r*math.Sin(azimuth)) <= law(c.VFOV/2)
}

// anyCamera draws a camera from all over the ranges.
func anyCamera(r *rand.Rand) camera.Camera {
	c := camera.Camera{
		Height: 0.2 + 3.8*r.Float64(), Tilt: (-10 + 100*r.Float64()) * deg,
		HFOV: (20 + 170*r.Float64()) * deg, VFOV: (15 + 155*r.Float64()) * deg,
	}
	if c.HFOV < 169*deg && c.VFOV < 169*deg {
		c.Rectilinear = r.IntN(2) == 0
	}
	return c
}

// TestReachByLooking walks over the ground and looks at each place whether
// the camera sees it: along the centerline, and along the line across.
func TestReachByLooking(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range 400 {
		c := anyCamera(r)
		near, far := c.Reach()
		for range 100 {
			y := 0.01 * math.Pow(5000, r.Float64())
			if math.Abs(y/near-1) < 1e-6 || math.Abs(y/far-1) < 1e-6 {
				continue
			}
			inside := near < y && y < far
			if seen(c, 0, y, 0) != inside {
				t.Fatalf("%+v sees from %g to %g m, looking at %g m says otherwise", c, near, far, y)
			}
			if !inside {
				continue
			}
			half := c.GroundWidth(y) / 2
			for range 20 {
				x := 0.01 * math.Pow(1e5, r.Float64())
				if math.Abs(x/half-1) > 1e-6 && seen(c, x, y, 0) != (x < half) {
					t.Fatalf("%+v sees %g m to the side at %g m, looking at %g m says otherwise", c, half, y, x)
				}
			}
		}
	}
}

// TestWidthScales: a view in half size is half as wide, whatever the units,
// and a camera that sees more across sees wider ground.
func TestWidthScales(t *testing.T) {
	big := compute(t, camera.CameraView, "height=2m&tilt=25deg&distance=3m")
	small := compute(t, camera.CameraView, "height=100cm&tilt=1500arcmin&distance=1500mm")
	for _, name := range []string{"near", "width"} {
		if math.Abs(big.Num(name)/small.Num(name)-2) > 1e-9 {
			t.Errorf("%s is %g and %g m at half the size", name, big.Num(name), small.Num(name))
		}
	}
	c, last := camera.Camera{Height: 1, Tilt: 30 * deg, VFOV: 100 * deg}, 0.0
	for across := 20.0; across < 180; across += 2 {
		c.HFOV = across * deg
		if width := c.GroundWidth(2); width <= last {
			t.Errorf("%g degrees see %g m, less see %g", across, width, last)
		} else {
			last = width
		}
	}
	if c.HFOV = math.Pi; !math.IsInf(c.GroundWidth(2), 1) {
		t.Error("180 degrees see an end of the ground")
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

func FuzzCameraView(f *testing.F) { fuzz(f, camera.CameraView) }

func benchmark(b *testing.B, c *calc.Calculator) {
	for b.Loop() {
		v, r, _ := c.Answer(nil)
		if len(calc.AppendMarkup(nil, v, r, "")) == 0 {
			b.Fatal("nothing")
		}
	}
}

func BenchmarkCameraView(b *testing.B) { benchmark(b, camera.CameraView) }
