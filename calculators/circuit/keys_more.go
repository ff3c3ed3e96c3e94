package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

var amplifierKeys = []Property{
	{Live: true, Input: calc.Input{Name: "current", Unit: "A", Min: 0.0001, Max: 500, Help: "What its supply draws on average at the loudest use."}, num: func(e *Element) *float64 { return &e.Current }},
	{Live: true, Input: calc.Input{Name: "power", Unit: "W", Min: 0.001, Max: 10000, Help: "The same as a constant power."}, num: func(e *Element) *float64 { return &e.Power }},
	{Input: calc.Input{Name: "output", Unit: "W", Min: 0.01, Max: 5000, Default: "50", Help: "Power of one output into its rated load."}, num: func(e *Element) *float64 { return &e.Output }},
	{Input: calc.Input{Name: "into", Unit: "ohm", Min: 0.5, Max: 32, Default: "4", Help: "The load that its output is rated at."}, num: func(e *Element) *float64 { return &e.Ohms }},
	{Input: calc.Input{Name: "least_load", Unit: "ohm", Min: 0.25, Max: 32, Default: "2", Help: "The least load that an output bears."}, num: func(e *Element) *float64 { return &e.LeastLoad }},
	{Input: calc.Input{Name: "channels", Kind: calc.Count, Min: 0, Max: 12, Default: "2", Help: "How many outputs it has, 1+ and 1- and so on."}, whole: func(e *Element) *int { return &e.Count }},
	{Input: calc.Input{Name: "remote", Unit: "mA", Min: 0, Max: 1000, Default: "10", Help: "What its switch-on lead rem draws."}, num: func(e *Element) *float64 { return &e.Remote }},
	{Live: true, Input: calc.Input{Name: "sleeps", Unit: "mA", Min: 0, Max: 20000, Default: "0", Help: "What its supply draws switched off."}, num: func(e *Element) *float64 { return &e.Sleeps }},
	{Input: calc.Input{Name: "inrush", Unit: "A", Min: 0, Max: 2000, Default: "0", Help: "Surge when it is switched on."}, num: func(e *Element) *float64 { return &e.Inrush }},
	{Input: calc.Input{Name: "surge", Unit: "s", Min: 0.001, Max: 10, Default: "0.1", Help: "How long the surge lasts."}, num: func(e *Element) *float64 { return &e.Surge }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "Lowest voltage that it works at."}, num: func(e *Element) *float64 { return &e.Least }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own."}, num: func(e *Element) *float64 { return &e.Drop }},
}

var speakerKeys = []Property{
	{Input: calc.Input{Name: "impedance", Unit: "ohm", Min: 0.5, Max: 64, Default: "4", Help: "Printed on the magnet."}, num: func(e *Element) *float64 { return &e.Ohms }},
	{Input: calc.Input{Name: "power", Unit: "W", Min: 0, Max: 5000, Default: "0", Help: "What it bears for long."}, num: func(e *Element) *float64 { return &e.Power }},
}

var groundKeys = []Property{
	{Required: true, Form: PointName, Input: calc.Input{Name: "point", Help: "The point of the body that it is bolted to."}, text: func(e *Element) *string { return &e.Point }},
	{Input: calc.Input{Name: "joint", Unit: "mohm", Min: 0, Max: 1000, Default: "0.5", Help: "Resistance of the bolted joint."}, num: func(e *Element) *float64 { return &e.Ohms }},
}

var wireKeys = []Property{
	{Form: Terminal, Required: true, Input: calc.Input{Name: "from", Help: "The end that it starts at."}},
	{Form: Terminal, Required: true, Input: calc.Input{Name: "to", Help: "The end that it goes to."}},
	{Required: true, Live: true, Input: calc.Input{Name: "size", Kind: calc.Wire, Min: 0.05, Max: 240, Help: "AWG or mm2, printed on the insulation."},
		num: func(e *Element) *float64 { return &e.Area }, text: func(e *Element) *string { return &e.Size }},
	{Required: true, Live: true, Input: calc.Input{Name: "length", Unit: "m", Min: 0.005, Max: 100, Help: "Along the way that it takes."},
		num: func(e *Element) *float64 { return &e.Length }, text: func(e *Element) *string { return &e.Run }},
	{Required: true, Form: Colour, Input: calc.Input{Name: "colour", Help: "Letters of IEC 60757, two colours run together: RD, RDBU."}, text: func(e *Element) *string { return &e.Colour }},
	{Input: calc.Input{Name: "conductor", Kind: calc.Word, Words: []string{"copper", "cca", "aluminium"}, Default: "copper", Help: "What the strands are made of."}, text: func(e *Element) *string { return &e.Conductor }},
	{Form: Insulation, Input: calc.Input{Name: "insulation", Unit: "C", Min: 60, Max: 250, Default: "105", Help: "Temperature rating, or a class letter A to H of ISO 6722-1."},
		num: func(e *Element) *float64 { return &e.Insulation }},
	{Input: calc.Input{Name: "bundled", Kind: calc.Count, Min: 1, Max: 30, Default: "1", Help: "Current-carrying wires in the same loom."}, whole: func(e *Element) *int { return &e.Bundled }},
	{Form: Flag, Input: calc.Input{Name: "sheathed", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: in a sleeve or conduit of its own from the source on."}, yes: func(e *Element) *bool { return &e.Sheathed }},
	{Form: FreeText, Input: calc.Input{Name: "function", Help: "What it is for; one colour has one function in a drawing."}, text: func(e *Element) *string { return &e.Function }},
}

var bodyKeys = []Property{
	{Required: true, Form: PointName, Input: calc.Input{Name: "from", Help: "A point of the body."}, text: func(e *Element) *string { return &e.From }},
	{Required: true, Form: PointName, Input: calc.Input{Name: "to", Help: "Another point of the body."}, text: func(e *Element) *string { return &e.To }},
	{Input: calc.Input{Name: "ohms", Unit: "mohm", Min: 0, Max: 10000, Default: "2", Help: "Resistance of the metal between them."}, num: func(e *Element) *float64 { return &e.Ohms }},
}

var linkKeys = []Property{
	{Required: true, Form: PartName, Input: calc.Input{Name: "from", Help: "The part that the cable starts at."}, text: func(e *Element) *string { return &e.From }},
	{Required: true, Form: PartName, Input: calc.Input{Name: "to", Help: "The part that it goes to."}, text: func(e *Element) *string { return &e.To }},
	{Input: calc.Input{Name: "carries", Kind: calc.Word, Words: []string{"camera", "video", "data", "audio", "signal"}, Default: "signal", Help: "What runs in it."}, text: func(e *Element) *string { return &e.Carries }},
}

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
	case Colour:
		return readColour(s)
	case Insulation:
		for _, c := range insulationClasses {
			if calc.SameWord(c.letter, s) {
				return calc.Value{Num: c.limit, Text: "class " + c.letter}, ""
			}
		}
	case FreeText, Terminal, PartName, PointName:
		if msg := plainText(s); msg != "" {
			return calc.Value{}, msg
		}
		if p.Form == PointName && len([]rune(s)) > longestName {
			return calc.Value{}, "“" + s + "” is longer than 24 letters, more than fits into the drawing"
		}
		return calc.Value{Text: s}, ""
	}
	return p.Input.Read(s)
}

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
