package camera

import "math"

// A kronrod row is a place of the 15-point Kronrod rule on −1 to 1 with its
// weight, and its weight in the 7-point Gauss rule within it (Piessens and
// others, QUADPACK, 1983; from memory, proved by integrating polynomials).
type kronrod struct{ at, weight, gauss float64 }

var kronrodRule = [...]kronrod{
	{0, 0.209482141084727828012999174891714, 0.417959183673469387755102040816327},
	{0.207784955007898467600689403773245, 0.204432940075298892414161999234649, 0},
	{0.405845151377397166906606412076961, 0.190350578064785409913256402421014, 0.381830050505118944950369775488975},
	{0.586087235467691130294144691693013, 0.169004726639267902826583426598550, 0},
	{0.741531185599394439863864773280788, 0.140653259715525918745189590510238, 0.279705391489276667901467771423780},
	{0.864864423359769072789712788640926, 0.104790010322250183839876322541518, 0},
	{0.949107912342758524526189684047851, 0.063092092629978553290700663189204, 0.129484966168869693270611432679082},
	{0.991455371120812639206854697526329, 0.022935322010529224963732008058970, 0},
}

// integrate gives the area under f between two places, halving where Gauss and
// Kronrod disagree by more than the tolerance, at most halvings times.
func integrate(f func(float64) float64, from, to, tolerance float64, halvings int) float64 {
	middle, half := (from+to)/2, (to-from)/2
	area, coarse := 0.0, 0.0
	for i, k := range kronrodRule {
		sum := f(middle + half*k.at)
		if i > 0 {
			sum += f(middle - half*k.at)
		}
		area += k.weight * sum
		coarse += k.gauss * sum
	}
	if halvings == 0 || math.Abs(area-coarse)*math.Abs(half) <= tolerance {
		return area * half
	}
	return integrate(f, from, middle, tolerance/2, halvings-1) + integrate(f, middle, to, tolerance/2, halvings-1)
}

// changes finds, in ascending order, where f changes sign between two places,
// given that it does so at most once in a 32nd of the way.
func changes(f func(float64) float64, from, to float64) []float64 {
	const steps = 32
	var all []float64
	last, before := from, f(from)
	for i := 1.0; i <= steps; i++ {
		at := from + (to-from)*i/steps
		now := f(at)
		if now < 0 != (before < 0) {
			all = append(all, root(f, last, at))
		}
		last, before = at, now
	}
	return all
}

// zeros finds, in ascending order, where f changes sign between 0 and 1.
// Between two turns of f, where its slope changes sign, it does so at most
// once, however near to each other two of its zeros are.
func zeros(f, slope func(float64) float64) []float64 {
	var all []float64
	from := 0.0
	for _, to := range append(changes(slope, 0, 1), 1) {
		if f(from) < 0 != (f(to) < 0) {
			all = append(all, root(f, from, to))
		}
		from = to
	}
	return all
}
