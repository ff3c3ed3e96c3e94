package camera_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/camera"
)

// TestHomography maps floor to picture with the matrix of a worked example
// (1280 x 720, view 100 degrees, 0.95 m, tilt 25 degrees), which comes from
// the textbook pinhole equations.
func TestHomography(t *testing.T) {
	const f = 537.0238
	vfov := 2 * math.Atan(360/f) / deg
	rows := [3][3]float64{{f, 580.0370, 256.9519}, {0, 99.3148, 606.9088}, {0, 0.906308, 0.401487}}
	for y := 1.0; y < 20; y *= 1.3 {
		r := compute(t, camera.GuideLines, fmt.Sprintf("lens=rectilinear&hfov=100&vfov=%.12f&height=0.95&tilt=25&pixels_wide=1280&pixels_high=720&vehicle_width=1.8&distances=%.9f", vfov, y))
		at := func(row int, x float64) float64 {
			return (rows[row][0]*x + rows[row][1]*y + rows[row][2]) / (rows[2][1]*y + rows[2][2])
		}
		for name, want := range map[string]float64{"left_x_1": at(0, -0.9), "right_x_1": at(0, 0.9), "y_1": at(1, 0)} {
			if a := r.Get(name); want > 0 && want < 1280 && a.Present && math.Abs(a.Num-want) > 2e-3 {
				t.Errorf("%s at %g m is %g px, want %g", name, y, a.Num, want)
			}
		}
	}
}

// TestMarksAreSeen: a mark has pixels exactly where looking at it finds it,
// its pixels lie in the picture, mirrored about its middle, and lead back to
// the angle off the axis from which they came.
func TestMarksAreSeen(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 10))
	for range 300 {
		c := anyCamera(r)
		lens := "equidistant"
		if c.Rectilinear {
			lens = "rectilinear"
		}
		wide, high, x, y := 100+700*r.Float64(), 100+700*r.Float64(), 0.5+r.Float64(), 0.1*math.Pow(200, r.Float64())
		got := compute(t, camera.GuideLines, fmt.Sprintf("height=%.15g&tilt=%.15g&hfov=%.15g&vfov=%.15g&lens=%s&pixels_wide=%.15g&pixels_high=%.15g&vehicle_width=%.15g&distances=%.15g",
			c.Height, c.Tilt/deg, c.HFOV/deg, c.VFOV/deg, lens, wide, high, 2*x, y))
		if got.Get("y_1").Present != seen(c, x, y, 0) {
			t.Fatalf("%+v: mark at %g, %g: %v", c, x, y, got.Reasons)
		}
		if !got.Get("y_1").Present {
			if !strings.Contains(got.Reasons[0], "outside the picture") {
				t.Fatalf("reasons %q", got.Reasons)
			}
			continue
		}
		left, right, down := got.Num("left_x_1"), got.Num("right_x_1"), got.Num("y_1")
		if math.Abs(left+right-wide) > 1e-9*wide || left < 0 || right > wide*(1+1e-9) || down < 0 || down > high*(1+1e-9) {
			t.Fatalf("%+v: pixels %g, %g, %g of %g × %g", c, left, right, down, wide, high)
		}
		law := func(half float64) float64 { return half }
		if c.Rectilinear {
			law = math.Tan
		}
		radius := math.Hypot((2*right/wide-1)*law(c.HFOV/2), (2*down/high-1)*law(c.VFOV/2))
		theta := math.Acos((y*math.Cos(c.Tilt) + c.Height*math.Sin(c.Tilt)) / math.Sqrt(x*x+y*y+c.Height*c.Height))
		if want := law(theta); math.Abs(radius-want) > 1e-7*(1+want) {
			t.Fatalf("%+v: pixels at %g from the middle, want %g", c, radius, want)
		}
	}
}

// TestMarksKeepTheirOrder: marks stand in the order given, in any unit.
func TestMarksKeepTheirOrder(t *testing.T) {
	r := compute(t, camera.GuideLines, "distances=3,100cm,2000 mm")
	for i, y := range []string{"3", "1", "2"} {
		one := compute(t, camera.GuideLines, "distances="+y)
		for _, name := range []string{"left_x_", "right_x_", "y_"} {
			if a, b := r.Num(name+fmt.Sprint(i+1)), one.Num(name+"1"); math.Abs(a-b) > 1e-9 {
				t.Errorf("%s%d is %g, alone %g", name, i+1, a, b)
			}
		}
	}
	if r.Get("y_4").Present || !calc.Over(r.Num("y_2"), r.Num("y_3")) {
		t.Error("a fourth mark, or the nearer mark not lower")
	}
}

func FuzzGuideLines(f *testing.F) { fuzz(f, camera.GuideLines) }

func BenchmarkGuideLines(b *testing.B) { benchmark(b, camera.GuideLines) }
