package calc

import (
	"math"
	"strconv"
	"strings"
)

// slack is the relative tolerance of a comparison with a limit, so that a
// limit exactly met counts as met despite rounding.
const slack = 1e-9

// Over reports whether v is above limit by more than rounding.
func Over(v, limit float64) bool {
	return v-limit > slack*math.Max(math.Abs(v), math.Abs(limit))
}

// Under reports whether v is below limit by more than rounding.
func Under(v, limit float64) bool { return Over(limit, v) }

// Format writes v with the given number of significant figures, without an
// exponent, without trailing zeros and never as a negative zero. Digits before
// the point are always kept whole.
func Format(v float64, figures int) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return "0"
	}
	if figures < 1 {
		figures = 1
	}
	e := strconv.FormatFloat(v, 'e', figures-1, 64)
	exponent := whole(e[strings.IndexByte(e, 'e')+1:])
	return FormatPlaces(v, min(max(figures-1-exponent, 0), 12))
}

// FormatPlaces writes v rounded to the given number of decimal places,
// trailing zeros and a negative zero removed.
func FormatPlaces(v float64, places int) string {
	s := strconv.FormatFloat(v, 'f', places, 64)
	if strings.IndexByte(s, '.') >= 0 {
		for s[len(s)-1] == '0' {
			s = s[:len(s)-1]
		}
		s = strings.TrimSuffix(s, ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// FormatFixed writes v with exactly the given number of decimal places, never
// as a negative zero: "313.50".
func FormatFixed(v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		v = 0
	}
	s := strconv.FormatFloat(v, 'f', places, 64)
	for i := range len(s) {
		if s[i] >= '1' && s[i] <= '9' {
			return s
		}
	}
	return strings.TrimPrefix(s, "-")
}

// FormatUnit writes a number and its unit as people read them: "0.83 V",
// "45°", "1.5 mm²".
func FormatUnit(v float64, figures int, unit string) string {
	return withUnit(Format(v, figures), unit)
}

// withUnit puts a unit, given by its symbol, behind a number that is already
// text.
func withUnit(number, unit string) string {
	switch unit {
	case "":
		return number
	case "deg":
		return number + "°"
	}
	return number + " " + ShownUnit(unit)
}

// exact writes v so that reading it gives v again.
func exact(v float64) string {
	if v == 0 {
		return "0"
	}
	if a := math.Abs(v); a >= 1e-6 && a < 1e15 {
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}
