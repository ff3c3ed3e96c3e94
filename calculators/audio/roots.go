package audio

import "math"

// positiveRoots finds, in ascending order, where a polynomial (constant term
// first) changes sign for x > 0. Between two neighboring roots of its
// derivative it rises or falls all the way, so each stretch holds at most one
// root, which halving finds to the last digit whatever the coefficients.
func positiveRoots(p []float64) []float64 {
	for len(p) > 1 && p[len(p)-1] == 0 {
		p = p[:len(p)-1]
	}
	if len(p) < 2 {
		return nil
	}
	derivative := make([]float64, len(p)-1)
	for i := range derivative {
		derivative[i] = float64(i+1) * p[i+1]
	}
	stops := append(positiveRoots(derivative), beyond(p))
	var roots []float64
	from := 0.0
	for _, to := range stops {
		if a, b := evaluate(p, from), evaluate(p, to); a < 0 && b >= 0 || a > 0 && b <= 0 {
			roots = append(roots, halve(p, from, to))
		}
		from = to
	}
	return roots
}

// beyond is a bound that no root of a polynomial exceeds (Cauchy).
func beyond(p []float64) float64 {
	most := 0.0
	for _, c := range p[:len(p)-1] {
		most = math.Max(most, math.Abs(c/p[len(p)-1]))
	}
	return 1 + most
}

// evaluate is a polynomial's value (Horner).
func evaluate(p []float64, x float64) float64 {
	v := 0.0
	for i := len(p) - 1; i >= 0; i-- {
		v = v*x + p[i]
	}
	return v
}

// halve finds the one sign change between two places until they are
// neighboring numbers.
func halve(p []float64, from, to float64) float64 {
	negative := evaluate(p, from) < 0
	for {
		middle := from + (to-from)/2
		if middle <= from || middle >= to {
			return to
		}
		if v := evaluate(p, middle); v < 0 == negative && v != 0 {
			from = middle
		} else {
			to = middle
		}
	}
}
