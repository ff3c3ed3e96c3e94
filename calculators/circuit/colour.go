package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

// A wireColour is a colour of IEC 60757: its letters, its name, and the ink
// that stands for it on a screen.
type wireColour struct{ letters, name, ink string }

// wireColours are the colour letters of IEC 60757.
var wireColours = []wireColour{
	{"BK", "black", "#1a1a1a"}, {"BN", "brown", "#7b4a21"}, {"RD", "red", "#d32222"},
	{"OG", "orange", "#ef7d00"}, {"YE", "yellow", "#f5d000"}, {"GN", "green", "#1e8a3c"},
	{"BU", "blue", "#1f5fbf"}, {"VT", "violet", "#7d3f98"}, {"GY", "grey", "#8a8f94"},
	{"WH", "white", "#ffffff"}, {"PK", "pink", "#f2a0b5"}, {"GD", "gold", "#c9a227"},
	{"TQ", "turquoise", "#18a8a8"}, {"SR", "silver", "#c4c9cd"},
}

// colourOf finds a colour by its letters.
func colourOf(letters string) (wireColour, bool) {
	for _, c := range wireColours {
		if c.letters == letters {
			return c, true
		}
	}
	return wireColour{}, false
}

// splitColour parts the letters of a wire into its body and its stripe, which
// is empty on a wire of one colour.
func splitColour(letters string) (body, stripe string) {
	if len(letters) == 4 {
		return letters[:2], letters[2:]
	}
	return letters, ""
}

// colourName says a colour in words: "red with a blue stripe".
func colourName(letters string) string {
	body, stripe := splitColour(letters)
	b, _ := colourOf(body)
	if stripe == "" {
		return b.name
	}
	s, _ := colourOf(stripe)
	return b.name + " and " + s.name
}

// readColour reads the letters of one core: RD, or two colours run together.
func readColour(s string) (calc.Value, string) {
	const form = "; write letters of IEC 60757 such as RD, or two colours of one core run together such as RDBU"
	letters := capitals(s)
	if strings.Contains(letters, "+") {
		return calc.Value{}, "“" + s + "” is the colours of two cores; draw each core as a wire of its own"
	}
	body, stripe := splitColour(letters)
	_, ok := colourOf(body)
	if ok && stripe != "" {
		_, ok = colourOf(stripe)
	}
	if ok {
		return calc.Value{Text: letters}, ""
	}
	for _, c := range wireColours {
		if calc.SameWord(c.name, s) {
			return calc.Value{}, "“" + s + "” is written " + c.letters + form
		}
	}
	return calc.Value{}, "“" + printable(s) + "” is not a colour" + form
}

// capitals are the letters of a colour in capitals, without spaces and strokes.
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

// fuseInks are inks for the body colours of ISO 8820-3 by their names.
var fuseInks = []struct{ name, ink string }{
	{"black", "#1a1a1a"}, {"grey", "#8a8f94"}, {"violet", "#7d3f98"}, {"pink", "#f2a0b5"}, {"tan", "#d2a679"},
	{"brown", "#7b4a21"}, {"red", "#d32222"}, {"blue", "#3f8fdc"}, {"yellow", "#f5d000"}, {"natural", "#f4efe2"},
	{"green", "#1e8a3c"}, {"blue-green", "#18a8a8"}, {"orange", "#ef7d00"}, {"tan or brown", "#a9764a"}, {"clear", "#f4f7f9"},
}

// inkNamed is the ink of a fuse's body colour, "" for one without.
func inkNamed(name string) string {
	for _, f := range fuseInks {
		if f.name == name {
			return f.ink
		}
	}
	return ""
}
