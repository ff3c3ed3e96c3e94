package audio

import (
	"math"
	"strings"

	"baybook/calculators/calc"
)

// Crossover answers which parts a passive filter needs.
var Crossover = &calc.Calculator{
	Name:     "crossover",
	Title:    "Passive filter for a speaker",
	Question: "Which capacitor and coil?",
	Doc:      "The parts of a passive filter into a load, and how much it leaves of a frequency.",
	Decides:  "level",
	Inputs: []calc.Input{
		{Name: "pass", Label: "What passes", Kind: calc.Word, Words: []string{"high", "low"}, Default: "high",
			Help: "high: keeps bass out of a small speaker. low: keeps treble out of a bass speaker."},
		{Name: "order", Label: "Order", Kind: calc.Count, Min: 1, Max: 4, Default: "1",
			Help: "How many parts, and how steep: 6 dB an octave for each."},
		{Name: "family", Label: "Family", Kind: calc.Word, Words: []string{"butterworth", "linkwitz-riley"}, Default: "butterworth",
			Help: "butterworth: 3 dB down at its frequency. linkwitz-riley: 6 dB down, orders 2 and 4 only."},
		{Name: "impedance", Label: "Load", Unit: "ohm", Min: 1, Max: 32, Default: "4",
			Help: "Of the speaker near the crossover frequency; nominal where nothing better is known."},
		{Name: "frequency", Label: "Crossover frequency", Unit: "Hz", Min: 10, Max: 20000, Default: "100",
			Help: "Well above a small speaker's resonance, twice it for a first or second order."},
		{Name: "probe", Label: "Level asked at", Unit: "Hz", Min: 5, Max: 40000, Default: "50",
			Help: "Any frequency whose level you want to know."},
	},
	Outputs: []calc.Output{
		{Name: "c1", Label: "Capacitor 1", Unit: "uF", Help: "numbered from the amplifier"},
		{Name: "l1", Label: "Coil 1", Unit: "mH"},
		{Name: "c2", Label: "Capacitor 2", Unit: "uF"},
		{Name: "l2", Label: "Coil 2", Unit: "mH"},
		{Name: "level", Label: "Level at that frequency", Unit: "dB", Places: 2},
	},
	Sources: []calc.Source{
		{Text: "Singly terminated ladder prototypes, filter theory (Cauer's continued fraction)"},
		{Text: "Linkwitz-Riley as two equal Butterworths in series, Linkwitz, JAES 1976", Standing: "from memory"},
	},
	Limits: []string{
		"A speaker is no resistor: its coil and its resonance move the result. Measure, or correct the impedance first.",
		"Coils have resistance and cores that saturate; take air core or a core rated for the current.",
		"Butterworth 2 and Linkwitz-Riley 2 pairs want one speaker's polarity turned.",
	},
	Cautions: []string{
		"Capacitors must be non-polar and rated over the amplifier's peak voltage: see “Voltage to set a gain to”.",
		"Loud music harms hearing: see “How loud, and for how long”.",
	},
	Run:    crossover,
	Figure: drawCrossover,
}

// filterOf is the normalized polynomial that a family and order name, nil
// where there is none.
func filterOf(family string, order int) []float64 {
	if family == "butterworth" {
		return butterworth[order]
	}
	if order < len(linkwitzRiley) {
		return linkwitzRiley[order]
	}
	return nil
}

// FilterLevel is the level in dB of a filter at x = f/fc for a low-pass, fc/f
// for a high-pass: −10·log10(1 + x^2n) for Butterworth of order n, twice that
// of half the order for Linkwitz-Riley.
func FilterLevel(family string, order int, x float64) float64 {
	if family == "linkwitz-riley" {
		return 2 * FilterLevel("butterworth", order/2, x)
	}
	return asDecibels(math.Pow(x, float64(2*order)))
}

func crossover(in *calc.Values, out *calc.Result) *calc.Problem {
	family, order := in.Word("family"), in.Int("order")
	filter := filterOf(family, order)
	if filter == nil {
		return calc.NewProblem("order", out.Fill("order {order} is not one of linkwitz-riley; give 2 or 4, or butterworth"))
	}
	high := in.Word("pass") == "high"
	prototype := Prototype(filter)
	frequency, load := in.SI("frequency"), in.SI("impedance")
	parts := Ladder(prototype, high, load, frequency)
	out.Work("Ladder for a source of 0 ohm into {impedance} at {frequency}")
	names := namesOf(parts)
	for i, p := range parts {
		out.SetSI(names[i], p.Value)
		out.Work(workPart(in, names[i], p, prototype[i], high) + " = " + showPart(p))
	}
	var missing []string
	for _, n := range [...]string{"c1", "l1", "c2", "l2"} {
		if !among(names, n) {
			missing = append(missing, n)
		}
	}
	if len(missing) > 0 {
		out.Note(strings.Join(missing, ", ") + " left out: a {pass}-pass of order {order} has no more parts than " + strings.Join(names, ", "))
	}
	x := in.SI("probe") / frequency
	if high {
		x = frequency / in.SI("probe")
	}
	level := FilterLevel(family, order, x)
	out.SetSI("level", level)
	out.Work("At {probe}, {1:4} of the crossover frequency: {2:4 dB}", in.SI("probe")/frequency, level)
	return nil
}

// namesOf names the parts from the source: l1 c1 l2 c2, or c1 l1 c2 l2.
func namesOf(parts []Part) []string {
	coils, capacitors := []string{"l1", "l2"}, []string{"c1", "c2"}
	var names []string
	for _, p := range parts {
		from := &capacitors
		if p.Coil {
			from = &coils
		}
		names = append(names, (*from)[0])
		*from = (*from)[1:]
	}
	return names
}

// workPart carries a part's numbers through its formula.
func workPart(in *calc.Values, name string, p Part, g float64, high bool) string {
	number := calc.Format(g, 5)
	if high {
		number = "1/" + number
	}
	w := "(2π × " + in.Get("frequency").Text
	if p.Coil {
		return name + ": " + number + " × " + in.Get("impedance").Text + " / " + w + ")"
	}
	return name + ": " + number + " / " + w + " × " + in.Get("impedance").Text + ")"
}

// showPart writes a part's value as it is sold.
func showPart(p Part) string {
	if p.Coil {
		return calc.FormatUnit(1e3*p.Value, 3, "mH")
	}
	return calc.FormatUnit(1e6*p.Value, 3, "uF")
}

// among reports whether a list has a name.
func among(list []string, name string) bool {
	for _, n := range list {
		if n == name {
			return true
		}
	}
	return false
}
