package calctest

import "math"

// Near reports whether got is within a tolerance of want, relative to want
// unless absolute. Nothing is near NaN.
func Near(got, want, tolerance float64, absolute bool) bool {
	return offBy(got, want, absolute) <= tolerance*(1+1e-9)
}

func offBy(got, want float64, absolute bool) float64 {
	d := math.Abs(got - want)
	if !absolute && want != 0 {
		d /= math.Abs(want)
	}
	return d
}
