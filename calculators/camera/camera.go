// Package camera holds the calculators for rear cameras: what of the ground
// is in the picture, where a mark on the floor lands in it, and how the test
// objects of the rear-visibility rule look. The ground is flat; x runs to the
// right of someone who looks backwards, y back from the bumper plane, z up.
// Lengths are in m and angles in rad. Nothing changes a calculator or a Camera,
// so goroutines may share them.
package camera

import (
	"math"

	"baybook/calculators/calc"
)

// A Camera is a lens over flat ground, in m and rad. Rectilinear lenses put a
// ray at f·tan θ from the middle of the picture, others (equidistant) at f·θ.
// The picture is the rectangle that reaches HFOV/2 to the sides and VFOV/2 up
// and down, measured through its middle.
type Camera struct {
	X, Y, Height float64 // place of the lens
	Tilt         float64 // optical axis below the horizontal
	HFOV, VFOV   float64 // whole angles of view
	Rectilinear  bool
}

// A vec is a direction or a place in the camera's own axes, from the lens.
type vec struct{ right, down, ahead float64 }

func (a vec) dot(b vec) float64 { return a.right*b.right + a.down*b.down + a.ahead*b.ahead }

func (a vec) cross(b vec) vec {
	return vec{a.down*b.ahead - a.ahead*b.down, a.ahead*b.right - a.right*b.ahead, a.right*b.down - a.down*b.right}
}

func (a vec) plus(s float64, b vec) vec {
	return vec{a.right + s*b.right, a.down + s*b.down, a.ahead + s*b.ahead}
}

// turn gives a direction in the vehicle's axes in the camera's.
func (c Camera) turn(x, y, z float64) vec {
	sin, cos := math.Sincos(c.Tilt)
	return vec{x, -y*sin - z*cos, y*cos - z*sin}
}

// half is half the picture's width and height, in focal lengths.
func (c Camera) half() (width, height float64) {
	if c.Rectilinear {
		return math.Tan(c.HFOV / 2), math.Tan(c.VFOV / 2)
	}
	return c.HFOV / 2, c.VFOV / 2
}

// level is the ratio of the distance ahead to the distance from the axis below
// which a place counts as level with the lens: only rounding is smaller.
const level = 1e-12

// Place is where a point of the vehicle's axes lands in the picture: u to the
// right and v down from its middle, in half widths and half heights, so that
// the picture is |u| ≤ 1, |v| ≤ 1. It is false for a point that lands nowhere:
// behind a rectilinear camera or level with it, or straight behind any.
func (c Camera) Place(x, y, z float64) (u, v float64, ok bool) {
	return c.place(c.turn(x-c.X, y-c.Y, z-c.Height))
}

func (c Camera) place(p vec) (u, v float64, ok bool) {
	width, height := c.half()
	rho := math.Hypot(p.right, p.down)
	if c.Rectilinear && p.ahead <= level*rho || rho == 0 && p.ahead <= 0 {
		return 0, 0, false
	}
	k := 1 / p.ahead
	if !c.Rectilinear && rho > 0 {
		k = math.Atan2(rho, p.ahead) / rho
	}
	return p.right * k / width, p.down * k / height, true
}

// Sees reports whether a point lies in the picture; its edge belongs to it.
func (c Camera) Sees(x, y, z float64) bool {
	return c.sees(c.turn(x-c.X, y-c.Y, z-c.Height))
}

func (c Camera) sees(p vec) bool {
	u, v, ok := c.place(p)
	return ok && !calc.Over(math.Abs(u), 1) && !calc.Over(math.Abs(v), 1)
}

// root finds where f changes sign between two places, to the last digits
// (Chandrupatla, Advances in Engineering Software 28, 1997: a parabola through
// three values where it can be trusted, else the middle; from memory).
func root(f func(float64) float64, from, to float64) float64 {
	a, b, c := to, from, from
	fa, fb, fc := f(a), f(b), 0.0
	t := 0.5
	for range 100 {
		x := a + t*(b-a)
		fx := f(x)
		if fx < 0 == (fa < 0) {
			c, fc = a, fa
		} else {
			c, fc, b, fb = b, fb, a, fa
		}
		a, fa = x, fx
		best, least := a, math.Abs(fa)
		if math.Abs(fb) < least {
			best, least = b, math.Abs(fb)
		}
		room := 2 * (0x1p-52*math.Abs(best) + 1e-18) / math.Abs(b-a)
		if room > 0.5 || least == 0 {
			return best
		}
		xi, phi := (a-b)/(c-b), (fa-fb)/(fc-fb)
		t = 0.5
		if phi*phi < xi && (1-phi)*(1-phi) < 1-xi {
			t = fa/(fb-fa)*fc/(fb-fc) + (c-a)/(b-a)*fa/(fc-fa)*fb/(fc-fb)
		}
		t = math.Min(1-room, math.Max(room, t))
	}
	return a
}

// inputs are those that describe the camera, followed by more.
func inputs(more ...calc.Input) []calc.Input {
	return append([]calc.Input{
		{Name: "height", Label: "Lens height", Unit: "m", Min: 0.2, Max: 4, Default: "0.9",
			Help: "From the ground to the middle of the lens, vehicle loaded as it is used."},
		{Name: "tilt", Label: "Tilt down", Unit: "deg", Min: -10, Max: 90, Default: "30",
			Help: "How far the lens looks below the horizontal; an inclinometer on the flat of the housing reads it. 0 looks level back."},
		{Name: "hfov", Label: "View across", Unit: "deg", Min: 20, Max: 190, Default: "130",
			Help: "Horizontal field of view off the camera's data sheet; the diagonal one is larger and must not be used."},
		{Name: "vfov", Label: "View upright", Unit: "deg", Min: 15, Max: 170, Default: "100",
			Help: "Vertical field of view off the data sheet."},
		{Name: "lens", Label: "Lens", Kind: calc.Word, Words: []string{"equidistant", "rectilinear"}, Default: "equidistant",
			Help: "Equidistant for a wide lens that bends straight lines; rectilinear where lines stay straight (both views below 170 deg)."},
	}, more...)
}

// read takes the camera from the inputs, on the centerline in the bumper plane.
func read(in *calc.Values) (Camera, *calc.Problem) {
	c := Camera{Height: in.SI("height"), Tilt: in.SI("tilt"), HFOV: in.SI("hfov"), VFOV: in.SI("vfov"),
		Rectilinear: in.Word("lens") == "rectilinear"}
	for _, view := range [...]string{"hfov", "vfov"} {
		if c.Rectilinear && !calc.Under(in.Num(view), 170) {
			return c, calc.NewProblem(view, in.Get(view).Text+" is too wide for a rectilinear lens; give less than 170 deg, or lens equidistant")
		}
	}
	return c, nil
}

// projection is where both lens laws come from.
var projection = calc.Source{Text: "Lens projections r = f·tan θ and r = f·θ, optics textbooks", Standing: "from memory"}

// notTheRule is a limit of every view that someone might compare with the
// rule.
const notTheRule = "A retrofit camera set up with this is not certified to any rear-visibility rule: check the regulation (49 CFR 571.111 in the USA), " +
	"and never delay, cover or shrink a factory rear picture."

// realLens says what two textbook lens laws leave out.
const realLens = "Real lenses lie between the two laws and housings crop the picture: look at the real picture with marks on the floor before drilling."
