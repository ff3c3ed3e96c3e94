package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

// insulationClasses are the temperature classes of ISO 6722-1 and ISO 19642-2
// in °C, from memory.
var insulationClasses = [...]struct {
	letter string
	limit  float64
}{{"A", 85}, {"B", 100}, {"C", 125}, {"D", 150}, {"E", 175}, {"F", 200}, {"G", 225}, {"H", 250}}

// read turns the text of a key into a value, or says what is wrong with it.
func (p *Property) read(s string) (calc.Value, string) {
	s = strings.TrimSpace(s)
	if s == "" {
		return calc.Value{}, "nothing given"
	}
	switch p.Form {
	case Color:
		return readColor(s)
	case Insulation:
		for _, c := range insulationClasses {
			if calc.SameWord(c.letter, s) {
				return calc.Value{Num: c.limit, Text: "class " + c.letter}, ""
			}
		}
	case Quantities:
		for _, item := range List(s) {
			if _, msg := p.Read(item); msg != "" {
				return calc.Value{}, msg
			}
		}
		return calc.Value{Text: s}, ""
	case FreeText, Terminal, PartName, PointName:
		if msg := plainText(s); msg != "" {
			return calc.Value{}, msg
		}
		if p.Form == PointName && len([]rune(s)) > longestName {
			return calc.Value{}, "“" + s + "” is longer than 24 letters, more than fits into the drawing"
		}
		return calc.Value{Text: s}, ""
	}
	if p.volts != nil && inVolts(s) {
		return dropVolts.Read(s)
	}
	return p.Input.Read(s)
}

// dropVolts reads a limit of drop in volts.
var dropVolts = calc.Input{Name: "drop", Unit: "V", Min: 0.001, Max: 60}

// inVolts reports whether a quantity is written in V or mV.
func inVolts(s string) bool { return strings.HasSuffix(strings.TrimSpace(s), "V") }

// advice is the help of a key as the end of a sentence that says what to give.
func (p *Property) advice() string { return asAdvice(p.Help) }

func asAdvice(help string) string {
	help = strings.TrimSuffix(help, ".")
	if len(help) > 1 && help[0] >= 'A' && help[0] <= 'Z' && help[1] >= 'a' && help[1] <= 'z' {
		help = string(help[0]-'A'+'a') + help[1:]
	}
	return help
}

// longestText is how many letters a name or a text may have: more does not
// stand beside a symbol.
const longestText = 40

// longestName is the same for a part or a point of the body.
const longestName = 24

// printable writes a question mark for what is no letter.
func printable(s string) string {
	return strings.ReplaceAll(string([]rune(s)), "\uFFFD", "?")
}

// plainText refuses what no name or text of a drawing holds.
func plainText(s string) string {
	n := 0
	for _, c := range s {
		n++
		if c < ' ' || c == 0x7F || c == 0xFFFD {
			return "“" + printable(s) + "” holds a character that cannot be printed"
		}
	}
	if n > longestText {
		return "“" + string([]rune(s)[:longestText/2]) + "…” is longer than 40 letters"
	}
	return ""
}
