package calc

import "strings"

// Scan reads the quantity at the start of running text, which begins with a
// digit: "4 m", "3/4 in", "13 ft 6 in", "2h30m", "13'6\"", "4,5 m", "1,500 mm".
// It gives where the first number ends and where the quantity does. A number
// with nothing known behind it comes back bare. What ParseQuantity reads whole
// is read alike here; a comma with three digits behind it, which a field
// refuses, is a thousands mark in a text.
func Scan(text string) (q Quantity, number, end int) {
	value, said, number := scanNumber(text)
	q = Quantity{Value: value, Number: said, Bare: true}
	end = number
	for first, last, at := (*Unit)(nil), (*Unit)(nil), 0; ; {
		v, part, rest := value, said, text[number:]
		if fraction, words, behind := readFraction(text[at:]); strings.IndexByte(words, '/') >= 0 {
			v, part, rest = fraction, words, behind
		} else if last != nil {
			var n int
			v, part, n = scanNumber(text[at:])
			rest = text[at+n:]
		}
		u, behind := unitIn(rest, last)
		if u == nil || last != nil && !follows(u, last) {
			return q, number, end
		}
		at = len(text) - len(behind)
		if first == nil {
			first = u
			q.Value, q.Unit, q.Bare = v, *u, false
			q.Parts = withUnit(part, u.Symbol)
		} else {
			q.Value += convert(v, u, first)
			q.Parts += " " + withUnit(part, u.Symbol)
		}
		end = at
		if last == nil && strings.IndexByte(part, '/') < 0 {
			q.Parts = "" // one plain part so far, which Number says
		} else if last != nil && q.Parts[0] == ' ' {
			q.Parts = withUnit(said, first.Symbol) + q.Parts
		}
		last = u
		after := trimSpace(behind)
		if after == "" || !isDigit(after[0]) {
			return q, number, end
		}
		at = len(text) - len(after)
		if len(after) == len(behind) { // it must go on, or it was no unit
			if _, _, n := scanNumber(after); !goesOn(after[n:], last) {
				return Quantity{Value: value, Number: said, Bare: true}, number, number
			}
		}
	}
}

// goesOn reports whether the unit behind a number may follow another unit.
func goesOn(rest string, last *Unit) bool {
	u, _ := unitIn(rest, last)
	return u != nil && follows(u, last)
}

// scanNumber reads a number without a sign at the start of a text, with a
// decimal comma or thousands marks where it has them, and how long it is.
func scanNumber(text string) (value float64, said string, length int) {
	n := numberLength(text)
	if n > 0 && text[n-1] == '.' { // the end of a sentence
		n--
	}
	if n == len(text) || text[n] != ',' || digits(text, 0) < n {
		return decimal(text[:n]), text[:n], n
	}
	groups, at := text[:n], n
	for at < len(text) && text[at] == ',' {
		end := digits(text, at+1)
		if end-at-1 != 3 {
			break
		}
		groups += text[at+1 : end]
		at = end
	}
	if behind := digits(text, n+1); at == n && behind > n+1 && (behind == len(text) || text[behind] != ',') {
		point := text[:n] + "." + text[n+1:behind]
		return decimal(point), point, behind
	}
	return decimal(groups), groups, at
}

// trimSpace takes one space off the front: between a number and its unit there
// is no more than one.
func trimSpace(s string) string {
	for _, space := range [...]string{" ", "\u00a0", "\u202f"} {
		if after, ok := strings.CutPrefix(s, space); ok {
			return after
		}
	}
	return s
}

// longestUnit is the most bytes that a unit has in any spelling.
const longestUnit = 8

// unitIn takes the longest unit at the start of a text that is no part of a
// longer word; a digit may stand right behind one that another part follows.
func unitIn(s string, last *Unit) (u *Unit, rest string) {
	for _, f := range feetAndInches {
		if after, ok := strings.CutPrefix(s, f.mark); ok && (last != nil || f.mark == "'" || f.mark == "″" || isFeet(f.symbol, after)) {
			return unitOf(f.symbol), after
		}
	}
	s = trimSpace(s)
	for n := min(longestUnit, len(s)); n > 0; n-- {
		if n < len(s) && s[n]&0xC0 == 0x80 {
			continue // inside a character
		}
		u := unitOf(s[:n])
		if s[:n] == "m" && last != nil && last.Dim == Time {
			u = unitOf("min")
		}
		if u != nil && endsUnit(s, n, u) {
			return u, s[n:]
		}
	}
	return nil, s
}

// isFeet reports whether a mark of feet inches stand behind; alone it may be
// one of minutes of arc, or close a quotation.
func isFeet(symbol, after string) bool {
	after = trimSpace(after)
	return symbol == "ft" && after != "" && isDigit(after[0])
}

// endsUnit reports whether a unit of n bytes is a whole word.
func endsUnit(s string, n int, u *Unit) bool {
	if n == len(s) || u.Dim == Ratio {
		return true
	}
	if isDigit(s[n]) {
		return u.Symbol == "ft" || u.Dim == Time
	}
	return !isLetter(s[n]) && s[n] < 0x80
}
