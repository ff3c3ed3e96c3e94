package english

import (
	"math"
	"strings"

	"baybook/calculators/calc"
)

// A Quantity is a number in running text, with the unit behind it.
type Quantity struct {
	calc.Quantity
	// Start is where it stands in the text, NumberEnd where its digits end and
	// End where its unit does.
	Start, NumberEnd, End int
	// Decimals is how many digits stand behind the point.
	Decimals int
}

// Tolerates reports whether a value rounds to what the text shows, at the
// digits that it shows.
func (q *Quantity) Tolerates(v float64) bool {
	half := 0.5 * math.Pow10(-q.Decimals)
	if math.Abs(v-q.Value) > half*(1+1e-9) {
		return false
	}
	return q.Value != 0 || math.Abs(v) < 1e-12 // "0 V" for 0.4 V says nothing
}

// Quantities finds the numbers in a text, each with the unit behind it. A
// number that is part of a name (M6, GR-02, 2.5.1) is none.
func Quantities(text string) []Quantity {
	var list []Quantity
	for at := 0; at < len(text); {
		if !IsDigit(text[at]) {
			at++
			continue
		}
		start := at
		end := numberEnd(text, at)
		at = end
		if gauge, ok := strokeGauge(text, start); ok {
			list = append(list, gauge)
			at = gauge.End
			continue
		}
		if partOfName(text, start, end) {
			for at < len(text) && (IsNameByte(text[at]) || text[at] == '.' && at+1 < len(text) && IsNameByte(text[at+1])) {
				at++
			}
			continue
		}
		q := quantityAt(text, start)
		list = append(list, q)
		at = max(at, q.NumberEnd, q.End)
	}
	return list
}

// quantityAt reads the quantity whose first digit is at a place, as fields and
// links read it.
func quantityAt(text string, start int) Quantity {
	scanned := text[start:]
	if start > 1 && text[start-1] == ',' && IsDigit(text[start-2]) { // an item of a list: 1,2,3
		scanned, _, _ = strings.Cut(scanned, ",")
	}
	read, number, length := calc.Scan(scanned)
	end := start + number
	q := Quantity{Quantity: read, Start: signStart(text, start), NumberEnd: end, End: start + length}
	if strings.HasPrefix(text[q.Start:], "-") || strings.HasPrefix(text[q.Start:], "−") {
		q.Value = -q.Value
	}
	q.Number = text[q.Start:end]
	if word, wordEnd := wordBehind(text, end); q.Bare && calc.IsGauge(word) {
		q.Unit, q.Bare, q.End = calc.Unit{Symbol: "AWG"}, false, wordEnd
	}
	if mark := strings.LastIndexAny(q.Number, ".,"); mark >= 0 && (q.Number[mark] == '.' || len(q.Number)-mark-1 != thousands) {
		q.Decimals = len(q.Number) - mark - 1
	}
	if q.Parts != "" { // a fraction, or two units: as fine as hundredths of the first
		q.Decimals = 2
	}
	return q
}

// thousands is how many digits stand behind a thousands mark.
const thousands = 3

// strokeGauge reads a gauge such as 2/0 AWG, which counts on below 1.
func strokeGauge(text string, at int) (Quantity, bool) {
	const stroke = len("2/0")
	if at+stroke > len(text) || text[at+1:at+stroke] != "/0" {
		return Quantity{}, false
	}
	word, end := wordBehind(text, at+stroke)
	if !calc.IsGauge(word) {
		return Quantity{}, false
	}
	w, msg := calc.ParseWire(text[at:at+stroke] + word)
	if msg != "" {
		return Quantity{}, false
	}
	read := calc.Quantity{Value: float64(w.Gauge), Unit: calc.Unit{Symbol: "AWG"}, Number: text[at : at+stroke]}
	return Quantity{Quantity: read, Start: at, NumberEnd: at + stroke, End: end}, true
}

// wordBehind is the word right behind a number or one space further.
func wordBehind(text string, at int) (word string, end int) {
	for _, space := range [...]string{" ", "\u00a0", "\u202f"} {
		if strings.HasPrefix(text[at:], space) {
			at += len(space)
			break
		}
	}
	end = at
	for end < len(text) && letter(text[end]) {
		end++
	}
	return text[at:end], end
}

// IsDigit reports whether a byte is a digit.
func IsDigit(c byte) bool { return c >= '0' && c <= '9' }

func letter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// IsNameByte reports whether a byte goes on with a name such as GR-02.
func IsNameByte(c byte) bool { return IsDigit(c) || letter(c) || c == '-' }

// numberEnd is where the number that starts at a place ends.
func numberEnd(text string, at int) int {
	for at < len(text) && IsDigit(text[at]) {
		at++
	}
	if at+1 < len(text) && text[at] == '.' && IsDigit(text[at+1]) {
		for at++; at < len(text) && IsDigit(text[at]); at++ {
		}
	}
	return at
}

// signStart takes in a sign that stands before a number and is none of a
// range ("5-10") or a name.
func signStart(text string, start int) int {
	for _, sign := range [...]string{"-", "−", "+"} {
		if before, ok := strings.CutSuffix(text[:start], sign); ok && (before == "" || strings.HasSuffix(before, " ") || strings.HasSuffix(before, "(")) {
			return start - len(sign)
		}
	}
	return start
}

// partOfName reports whether digits belong to a name: letters or a hyphen with
// letters before them, a second point behind them.
func partOfName(text string, start, end int) bool {
	if start > 0 {
		c := text[start-1]
		if letter(c) || c == '.' || c == '/' || c == '#' || c == '_' {
			return true
		}
		if start > 1 && (c == '-' && letter(text[start-2]) || c == ':' && IsDigit(text[start-2])) {
			return true // GR-02, 4:1
		}
	}
	if end < len(text) {
		if text[end] == ':' && end+1 < len(text) && IsDigit(text[end+1]) {
			return true // 4:1
		}
		if text[end] == '.' && end+1 < len(text) && IsDigit(text[end+1]) {
			return true // 1.4.3
		}
	}
	return false
}

// Within converts a value of one unit into another of the same dimension;
// false where they differ.
func Within(v float64, from, to calc.Unit) (float64, bool) {
	const gauge = "AWG"
	if from.Dim != to.Dim || (from.Symbol == gauge) != (to.Symbol == gauge) {
		return 0, false
	}
	return calc.Convert(v, from, to), true
}

// IsGauge reports whether the unit is a wire gauge, which names a size.
func (q *Quantity) IsGauge() bool { return q.Unit.Symbol == "AWG" }

// InBrackets reports whether b stands in brackets right behind a.
func InBrackets(text string, a, b *Quantity) bool {
	return a.End <= b.Start && strings.TrimSpace(text[a.End:b.Start]) == "(" &&
		strings.HasPrefix(text[b.End:], ")") && !a.Bare && !b.Bare
}

// Restates reports whether b only says a again in another unit.
func Restates(text string, a, b *Quantity) bool {
	return InBrackets(text, a, b) && a.Unit.Dim == b.Unit.Dim
}

// SpeaksOf reports whether a number is one of the noun: "25 A fuse", "fuse of
// 25 A", "fuse is 25 A", "fuse: 25 A".
func SpeaksOf(text string, q *Quantity, noun string) bool {
	after := strings.Fields(text[q.End:])
	if len(after) > 0 && strings.Trim(after[0], ".,;:)") == noun && strings.HasPrefix(text[q.End:], " ") {
		return true
	}
	before := strings.Fields(strings.ToLower(text[:q.Start]))
	n := len(before)
	if n >= 2 && (before[n-1] == "of" || before[n-1] == "is") && before[n-2] == noun {
		return true
	}
	return n >= 1 && before[n-1] == noun+":"
}
