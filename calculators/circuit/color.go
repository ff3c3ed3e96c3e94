package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

// A wireColor is a color of IEC 60757: its letters and its name.
type wireColor struct{ letters, name string }

// wireColors are the color letters of IEC 60757.
var wireColors = []wireColor{
	{"BK", "black"}, {"BN", "brown"}, {"RD", "red"},
	{"OG", "orange"}, {"YE", "yellow"}, {"GN", "green"},
	{"BU", "blue"}, {"VT", "violet"}, {"GY", "grey"},
	{"WH", "white"}, {"PK", "pink"}, {"GD", "gold"},
	{"TQ", "turquoise"}, {"SR", "silver"},
}

// colorOf finds a color by its letters.
func colorOf(letters string) (name string, ok bool) {
	for _, c := range wireColors {
		if c.letters == letters {
			return c.name, true
		}
	}
	return "", false
}

// SplitColor splits the letters of a wire into its body and its stripe, which
// is empty on a wire of one color.
func SplitColor(letters string) (body, stripe string) {
	if len(letters) == 4 {
		return letters[:2], letters[2:]
	}
	return letters, ""
}

// ColorName says a color in words: "red with a blue stripe".
func ColorName(letters string) string {
	body, stripe := SplitColor(letters)
	b, _ := colorOf(body)
	if stripe == "" {
		return b
	}
	s, _ := colorOf(stripe)
	return b + " and " + s
}

// readColor reads the letters of one core: RD, or two colors run together.
func readColor(s string) (calc.Value, string) {
	const form = "; write letters of IEC 60757 such as RD, or two colours of one core run together such as RDBU"
	letters := capitals(s)
	if strings.Contains(letters, "+") {
		return calc.Value{}, "“" + s + "” is the colours of two cores; draw each core as a wire of its own"
	}
	body, stripe := SplitColor(letters)
	_, ok := colorOf(body)
	if ok && stripe != "" {
		_, ok = colorOf(stripe)
	}
	if ok {
		return calc.Value{Text: letters}, ""
	}
	for _, c := range wireColors {
		if calc.SameWord(c.name, s) {
			return calc.Value{}, "“" + s + "” is written " + c.letters + form
		}
	}
	return calc.Value{}, "“" + printable(s) + "” is not a colour" + form
}

// capitals are the letters of a color in capitals, without spaces and strokes.
func capitals(s string) string {
	var b []byte
	for i := range len(s) {
		switch c := s[i]; {
		case c == '/' || c == ' ':
		case c >= 'a' && c <= 'z':
			b = append(b, c&^0x20)
		default:
			b = append(b, c)
		}
	}
	return string(b)
}
