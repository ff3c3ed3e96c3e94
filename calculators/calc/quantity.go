package calc

import (
	"math"
	"strconv"
	"strings"
)

// A Quantity is a number as it was given, with the unit written behind it;
// Unit is the unit "" where none was.
type Quantity struct {
	Value float64
	Unit  Unit
	// Bare is true where no unit was written.
	Bare bool
	// Number is the number as typed, without spaces.
	Number string
}

// String writes the quantity as it was given, with one space before its unit.
func (q Quantity) String() string { return withUnit(q.Number, q.Unit.Symbol) }

// ParseQuantity reads a decimal number and an optional unit: "4 m", "13ft",
// "-40C", "1e3 Hz". It refuses, saying why, a decimal comma, a hexadecimal
// or unbounded number and a unit that it does not know. The message is
// complete but for the name of the input.
func ParseQuantity(s string) (Quantity, string) {
	s = strings.TrimSpace(strings.ReplaceAll(s, "−", "-"))
	if s == "" {
		return Quantity{}, "nothing given; give a number"
	}
	n := numberLength(s)
	rest := strings.TrimSpace(s[n:])
	if n > 0 && strings.HasPrefix(rest, ",") {
		return Quantity{}, s + " has a comma; write a decimal point (1.5), no thousands mark"
	}
	if n == 0 {
		return Quantity{}, s + " is not a number"
	}
	if n == 1 && s[0] == '0' && len(s) > 1 && (s[1] == 'x' || s[1] == 'X') {
		return Quantity{}, s + " is hexadecimal; give a decimal number"
	}
	v, err := strconv.ParseFloat(s[:n], 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return Quantity{}, s + " is not a finite number"
	}
	q := Quantity{Value: v + 0, Number: s[:n], Bare: rest == ""}
	if v == 0 {
		q.Value, q.Number = 0, "0" // no negative zero goes in, so none comes out
	}
	if q.Bare {
		return q, ""
	}
	u, ok := LookupUnit(rest)
	if !ok {
		return Quantity{}, unknownUnit(s, rest)
	}
	q.Unit = u
	return q, ""
}

// numberLength is how many bytes of s are a decimal number: an optional sign,
// digits with at most one point, an optional exponent. 0 where there is none.
func numberLength(s string) int {
	i := 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	digits := 0
	for ; i < len(s) && isDigit(s[i]); i++ {
		digits++
	}
	if i < len(s) && s[i] == '.' {
		i++
		for ; i < len(s) && isDigit(s[i]); i++ {
			digits++
		}
	}
	if digits == 0 {
		return 0
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		k := j
		for ; k < len(s) && isDigit(s[k]); k++ {
		}
		if k > j {
			i = k
		}
	}
	return i
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// unknownUnit words the refusal of a unit, with the nearest one known.
func unknownUnit(given, unit string) string {
	var names []string
	for _, u := range units[1:] {
		names = append(names, u.Symbol)
	}
	msg := given + " has the unit " + unit + ", which is not known"
	if near := Nearest(unit, append(names, "AWG")); near != "" {
		msg += "; did you mean " + near + "?"
	}
	return msg
}
