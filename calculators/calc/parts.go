package calc

import "strings"

// readParts reads what the trade writes in fractions and in two units:
// "3/4in", "1 1/2 in", "13ft6in", "13'6 1/2\"", "2h30m". It reports whether
// the whole of s is such a quantity. A sign in front applies to all of it.
func (q *Quantity) readParts(s string) bool {
	sign := 1.0
	if s[0] == '-' || s[0] == '+' {
		if s[0] == '-' {
			sign = -1
		}
		s = s[1:]
	}
	var first, last *Unit
	value, said := 0.0, ""
	for s != "" {
		v, number, rest := readFraction(s)
		if number == "" {
			return false
		}
		var u *Unit
		u, s = unitBefore(rest, last)
		if u == nil || last != nil && !follows(u, last) {
			return false
		}
		if first == nil {
			first = u
		} else {
			said += " "
		}
		value += convert(v, u, first)
		said += withUnit(number, u.Symbol)
		last = u
	}
	if sign < 0 {
		said = "-" + said
	}
	q.Value, q.Unit, q.Parts, q.Bare = sign*value+0, *first, said, false
	if first == last && strings.IndexByte(said, '/') < 0 { // one part after all
		q.Number, q.Parts = strings.TrimSuffix(said, " "+ShownUnit(first.Symbol)), ""
	}
	return true
}

// readFraction reads "6", "6.5", "3/4" or "1 1/2" at the start of s: its value,
// its text and what stands behind it. The text is empty where there is none.
func readFraction(s string) (value float64, text, rest string) {
	n := numberLength(s)
	if n == 0 || !isDigit(s[0]) {
		return 0, "", s
	}
	value, text, rest = decimal(s[:n]), s[:n], s[n:]
	if digits(text, 0) < n { // a decimal has no fraction behind it
		return value, text, strings.TrimLeft(rest, " ")
	}
	if v, t, after := over(value, rest); t != "" {
		return v, text + t, after
	}
	behind := strings.TrimLeft(rest, " -")
	if m := digits(behind, 0); m > 0 && len(behind) < len(rest) {
		if v, t, after := over(decimal(behind[:m]), behind[m:]); t != "" {
			return value + v, text + " " + behind[:m] + t, after
		}
	}
	return value, text, strings.TrimLeft(rest, " ")
}

// over reads "/4" behind a numerator; the text is empty where there is none.
func over(numerator float64, s string) (value float64, text, rest string) {
	if s == "" || s[0] != '/' {
		return 0, "", s
	}
	n := digits(s, 1)
	if n == 1 || decimal(s[1:n]) == 0 {
		return 0, "", s
	}
	return numerator / decimal(s[1:n]), s[:n], strings.TrimLeft(s[n:], " ")
}

// feetAndInches are the marks that mean feet and inches where two parts of a
// length stand together.
var feetAndInches = []struct{ mark, symbol string }{{"'", "ft"}, {"′", "ft"}, {"’", "ft"}, {"\"", "in"}, {"″", "in"}, {"”", "in"}}

// unitBefore takes the unit at the start of s, up to the next digit. After
// hours an m alone means minutes.
func unitBefore(s string, last *Unit) (u *Unit, rest string) {
	for _, f := range feetAndInches {
		if after, ok := strings.CutPrefix(s, f.mark); ok {
			return unitOf(f.symbol), strings.TrimSpace(after)
		}
	}
	if u := unitOf(s); u != nil && !(s == "m" && last != nil) {
		return u, ""
	}
	end := 0
	for end < len(s) && !isDigit(s[end]) {
		end++
	}
	symbol := strings.TrimSpace(s[:end])
	if symbol == "m" && last != nil && last.Dim == Time {
		symbol = "min"
	}
	return unitOf(symbol), s[end:]
}

// follows reports whether a unit may stand behind another in one quantity:
// inches behind feet, minutes behind hours.
func follows(u, before *Unit) bool {
	return u.Dim == before.Dim && u.Base < before.Base && (u.Dim == Time || before.Symbol == "ft" && u.Symbol == "in")
}
