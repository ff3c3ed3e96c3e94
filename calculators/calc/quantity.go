package calc

import (
	"math"
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
	// Parts is the whole quantity, tidied, where it was given as a fraction or
	// in two units: "3/4 in", "13 ft 6 in". Value is then in Unit, the first.
	Parts string
	// Currency is the sign in front of a price, else "".
	Currency string
}

// String writes the quantity as it was given, with one space before its unit.
func (q Quantity) String() string {
	if q.Parts != "" {
		return q.Parts
	}
	return withCurrency(q.Currency, withUnit(q.Number, q.Unit.Symbol))
}

// shown is the quantity as results and drawings repeat it: as it was given,
// where that is no longer than a number needs to be.
func (q *Quantity) shown(unit string) string {
	if q.Parts != "" {
		return q.Parts
	}
	const longest, digits = 12, 9
	if len(q.Number) <= longest {
		return withUnit(q.Number, unit)
	}
	return withUnit(Format(q.Value, digits), unit)
}

// in is the value of a quantity in another unit of its dimension.
func (q *Quantity) in(u *Unit) float64 { return convert(q.Value, &q.Unit, u) }

// is says what a quantity measures: "4 m is a length".
func (q *Quantity) is() string { return q.String() + " is " + q.Unit.Dim.String() }

// ParseQuantity reads a decimal number and an optional unit: "4 m", "13ft",
// "-40C", "1e3 Hz"; also what the trade writes: "3/4in", "13ft6in", "13'6\"",
// "2h30m" and, for a price, "$95". It refuses, saying why, a decimal comma
// (see PointForComma), a hexadecimal or unbounded number and a unit that it
// does not know. The message is complete but for the name of the input.
func ParseQuantity(s string) (Quantity, string) {
	var q Quantity
	if msg := q.read(s); msg != "" {
		return Quantity{}, msg
	}
	return q, ""
}

// read is ParseQuantity into q.
func (q *Quantity) read(s string) string {
	s = strings.TrimSpace(strings.ReplaceAll(s, "−", "-"))
	if s == "" {
		return "nothing given; give a number"
	}
	whole := s
	q.Currency, s = cutCurrency(s)
	n := numberLength(s)
	rest := strings.TrimSpace(s[n:])
	if n == 0 {
		return whole + " is not a number"
	}
	if rest != "" && rest[0] == ',' {
		return whole + " has a comma; write a decimal point (1.5), no thousands mark"
	}
	if n == 1 && s[0] == '0' && len(s) > 1 && s[1]|0x20 == 'x' {
		return whole + " is hexadecimal; give a decimal number"
	}
	v := decimal(s[:n])
	if math.IsInf(v, 0) {
		return whole + " is not a finite number"
	}
	q.Value, q.Number, q.Bare = v, s[:n], rest == ""
	if v == 0 {
		q.Value, q.Number = 0, "0" // no negative zero goes in, so none comes out
	}
	if q.Bare {
		return ""
	}
	if q.Currency != "" {
		return whole + " is a price with a unit; give " + q.Currency + q.Number
	}
	if u := unitOf(rest); u != nil {
		q.Unit = *u
		return ""
	}
	if q.readParts(s) {
		return ""
	}
	return unknownUnit(s, rest)
}

// numberLength is how many bytes of s are a decimal number: an optional sign,
// digits with at most one point, an optional exponent. 0 where there is none.
func numberLength(s string) int {
	i := signed(s, 0)
	from := i
	i = digits(s, i)
	count := i - from
	if i < len(s) && s[i] == '.' {
		from = i + 1
		i = digits(s, from)
		count += i - from
	}
	if count == 0 {
		return 0
	}
	if i < len(s) && s[i]|0x20 == 'e' {
		from = signed(s, i+1)
		if end := digits(s, from); end > from {
			i = end
		}
	}
	return i
}

// signed is the index after a sign at i, or i where there is none.
func signed(s string, i int) int {
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	return i
}

// digits is the index after the digits at i.
func digits(s string, i int) int {
	for i < len(s) && isDigit(s[i]) {
		i++
	}
	return i
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// unknownUnit words the refusal of a unit, with the nearest one known.
func unknownUnit(given, unit string) string {
	if SameWord(unit, "AWG") {
		return given + " is a wire gauge, which only a wire has"
	}
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
