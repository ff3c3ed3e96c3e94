package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

var amplifierKeys = with([]Property{
	live(number("current", "A", 0.0001, 500, "", "What its supply draws on average at the loudest use.", func(e *Element) *float64 { return &e.Current })),
	live(number("power", "W", 0.001, 10000, "", "The same as a constant power.", func(e *Element) *float64 { return &e.Power })),
	number("output", "W", 0.01, 5000, "50", "Power of one output into its rated load.", func(e *Element) *float64 { return &e.Output }),
	number("into", "ohm", 0.5, 32, "4", "The load that its output is rated at.", func(e *Element) *float64 { return &e.Ohms }),
	number("least_load", "ohm", 0.25, 32, "2", "The least load that an output bears.", func(e *Element) *float64 { return &e.LeastLoad }),
	count("channels", 0, 12, "2", "How many outputs it has, 1+ and 1- and so on.", func(e *Element) *int { return &e.Count }),
	number("remote", "mA", 0, 1000, "10", "What its switch-on lead rem draws.", func(e *Element) *float64 { return &e.Remote }),
	live(number("sleeps", "mA", 0, 20000, "0", "What its supply draws switched off.", func(e *Element) *float64 { return &e.Sleeps })),
	number("inrush", "A", 0, 2000, "0", "Surge when it is switched on.", func(e *Element) *float64 { return &e.Inrush }),
	number("surge", "s", 0.001, 10, "0.1", "How long the surge lasts.", func(e *Element) *float64 { return &e.Surge }),
	number("least", "V", 0, 60, "0", "Lowest voltage that it works at.", func(e *Element) *float64 { return &e.Least }),
	number("drop", "%", 0.1, 100, "", "A limit of drop of its own.", func(e *Element) *float64 { return &e.Drop }),
}, endKeys)

var speakerKeys = with([]Property{
	number("impedance", "ohm", 0.5, 64, "4", "Printed on the magnet.", func(e *Element) *float64 { return &e.Ohms }),
	number("power", "W", 0, 5000, "0", "What it bears for long.", func(e *Element) *float64 { return &e.Power }),
}, endKeys)

var groundKeys = with([]Property{
	needed(text(PointName, "point", "The point of the body that it is bolted to.", func(e *Element) *string { return &e.Point })),
	number("joint", "mohm", 0, 1000, "0.5", "Resistance of the bolted joint.", func(e *Element) *float64 { return &e.Ohms }),
})

var wireKeys = with([]Property{
	{Form: Terminal, Required: true, Input: calc.Input{Name: "from", Help: "The end that it starts at."}},
	{Form: Terminal, Required: true, Input: calc.Input{Name: "to", Help: "The end that it goes to."}},
	{Required: true, Live: true, Input: calc.Input{Name: "size", Kind: calc.Wire, Min: 0.05, Max: 240, Help: "AWG or mm2, printed on the insulation."},
		set: func(e *Element, v calc.Value) { e.Area, e.Size = v.Num*1e-6, v.Text }},
	{Required: true, Live: true, Input: calc.Input{Name: "length", Unit: "m", Min: 0.005, Max: 100, Help: "Along the way that it takes."},
		set: func(e *Element, v calc.Value) { e.Length, e.Run = v.Num, v.Text }},
	needed(text(Colour, "colour", "Letters of IEC 60757, two colours run together: RD, RDBU.", func(e *Element) *string { return &e.Colour })),
	word("conductor", []string{"copper", "cca", "aluminium"}, "copper", "What the strands are made of.", func(e *Element) *string { return &e.Conductor }),
	{Form: Insulation, Input: calc.Input{Name: "insulation", Unit: "C", Min: 60, Max: 250, Default: "105", Help: "Temperature rating, or a class letter A to H of ISO 6722-1."},
		set: func(e *Element, v calc.Value) { e.Insulation = v.Num }},
	count("bundled", 1, 30, "1", "Current-carrying wires in the same loom.", func(e *Element) *int { return &e.Bundled }),
	flag("sheathed", "yes: in a sleeve or conduit of its own from the source on.", func(e *Element) *bool { return &e.Sheathed }),
	text(FreeText, "function", "What it is for; one colour has one function in a drawing.", func(e *Element) *string { return &e.Function }),
})

var bodyKeys = []Property{
	needed(text(PointName, "from", "A point of the body.", func(e *Element) *string { return &e.From })),
	needed(text(PointName, "to", "Another point of the body.", func(e *Element) *string { return &e.To })),
	number("ohms", "mohm", 0, 10000, "2", "Resistance of the metal between them.", func(e *Element) *float64 { return &e.Ohms }),
}

var linkKeys = []Property{
	needed(text(PartName, "from", "The part that the cable starts at.", func(e *Element) *string { return &e.From })),
	needed(text(PartName, "to", "The part that it goes to.", func(e *Element) *string { return &e.To })),
	word("carries", []string{"camera", "video", "data", "audio", "signal"}, "signal", "What runs in it.", func(e *Element) *string { return &e.Carries }),
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
			if strings.EqualFold(c.letter, s) {
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

// plainText refuses what no name or text of a drawing holds.
func plainText(s string) string {
	n := 0
	for _, c := range s {
		n++
		if c < ' ' || c == 0x7F || c == 0xFFFD {
			return "“" + strings.ToValidUTF8(s, "?") + "” holds a character that cannot be printed"
		}
	}
	if n > longestText {
		return "“" + strings.ToValidUTF8(s[:longestText/2], "") + "…” is longer than 40 letters"
	}
	return ""
}
