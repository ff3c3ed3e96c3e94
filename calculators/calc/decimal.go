package calc

import (
	"math"
	"math/bits"
)

// decimal is the number in a text that numberLength has accepted. Up to 19
// digits and 19 places either way it is the nearest float64, as
// strconv.ParseFloat gives; beyond that it may be a few units in the last
// place off. It is used in place of strconv, which would bring every other way
// to write a number, and its error messages, into the browser's download.
func decimal(s string) float64 {
	var digits uint64
	power, points, at := 0, 0, 0
	for ; at < len(s) && s[at]|0x20 != 'e'; at++ {
		switch c := s[at]; {
		case c == '.':
			points = 1
		case isDigit(c) && digits < 1e18:
			digits = 10*digits + uint64(c-'0')
			power -= points
		case isDigit(c):
			power += 1 - points
		}
	}
	if at < len(s) {
		power += whole(s[at+1:])
	}
	v := 0.0
	if digits != 0 {
		near := min(max(power, -19), 19)
		v = scaled(digits, near)
		if power != near {
			v *= math.Pow10(power - near)
		}
	}
	if s[0] == '-' {
		v = -v
	}
	return v
}

// whole reads a whole number with or without a sign; a value too large for any
// use becomes a million.
func whole(s string) int {
	n := 0
	for i := range len(s) {
		if isDigit(s[i]) {
			n = min(10*n+int(s[i]-'0'), 1e6)
		}
	}
	if s[0] == '-' {
		return -n
	}
	return n
}

// scaled is digits × 10^power rounded once; digits is not 0 and power from
// -19 to 19. The exact product or quotient is cut to 64 bits, the last of
// which is set where anything is cut off, and rounding to 53 goes by those.
func scaled(digits uint64, power int) float64 {
	ten := uint64(1)
	for range max(power, -power) {
		ten *= 10
	}
	var high, low uint64
	exponent := 0
	if power >= 0 {
		high, low = bits.Mul64(digits, ten)
		if high == 0 {
			return float64(low)
		}
		shift := bits.LeadingZeros64(high)
		exponent = 64 - shift
		high, low = high<<shift|low>>(64-shift), low<<shift
	} else {
		up, down := bits.LeadingZeros64(digits), bits.LeadingZeros64(ten)
		exponent = down - up - 63
		high, low = bits.Div64(digits<<up>>1, digits<<up<<63, ten<<down)
	}
	if low != 0 {
		high |= 1
	}
	return math.Ldexp(float64(high), exponent)
}
