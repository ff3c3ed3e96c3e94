package audio

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// CoilLoad answers what load a set of voice coils presents.
var CoilLoad = &calc.Calculator{
	Name:     "coil-load",
	Title:    "Load of voice coils together",
	Question: "Which load do the coils make?",
	Doc:      "The load of equal voice coils in equal parallel strings, every other load they can make, and whether the amplifier takes it.",
	Decides:  "load",
	Inputs: []calc.Input{
		{Name: "coils", Label: "Voice coils", Kind: calc.Count, Min: 1, Max: 16, Default: "2",
			Help: "All coils on one channel: a speaker with two coils counts two."},
		{Name: "impedance", Label: "Of one coil", Unit: "ohm", Min: 0.5, Max: 32, Default: "4",
			Help: "Nominal, on the magnet or data sheet. A meter on direct current reads a good tenth to a quarter less."},
		{Name: "strings", Label: "Parallel strings", Kind: calc.Count, Min: 1, Max: 16, Default: "1",
			Help: "Into how many equal strings the coils are split: 1 is all in series, as many as coils is all in parallel."},
		{Name: "amp_minimum", Label: "Amplifier's least", Unit: "ohm", Min: 0.5, Max: 16, Default: "2",
			Help: "The smallest load that its data sheet allows on this channel; bridged it is usually twice that."},
	},
	Outputs: []calc.Output{
		{Name: "load", Label: "Load", Unit: "ohm"},
		{Name: "choices", Label: "Loads they can make", Text: true},
	},
	Sources: []calc.Source{
		{Text: "Series adds, parallel divides: Z × (coils / strings) / strings, circuit theory"},
		{Text: "A rated impedance may fall to 80 % in its band, IEC 60268-5", Standing: "from memory"},
	},
	Limits: []string{
		"Equal coils only; unequal ones share the power unequally.",
		"Nominal impedance is a label: the true one changes with frequency and may dip a fifth under it.",
		"Two coils of one speaker must both be driven, and alike.",
	},
	Cautions: []string{
		"A load under the amplifier's least overheats it and can start a fire behind the trim.",
		"Check the sum with a meter before the amplifier is switched on: a short reads near 0 ohm.",
		"Loud music harms hearing and hides sirens.",
	},
	Run:    coilLoad,
	Figure: drawCoilLoad,
}

// StringsLoad is the load in ohm of a number of equal coils, each of the given
// impedance in ohm, wired as equal parallel strings.
func StringsLoad(coils, strings int, impedance float64) float64 {
	return impedance * (float64(coils) / float64(strings)) / float64(strings)
}

// divisors are the counts of equal strings into which coils can be split.
func divisors(coils int) []int {
	var all []int
	for n := 1; n <= coils; n++ {
		if coils%n == 0 {
			all = append(all, n)
		}
	}
	return all
}

func coilLoad(in *calc.Values, out *calc.Result) *calc.Problem {
	coils, n, impedance := in.Int("coils"), in.Int("strings"), in.SI("impedance")
	if coils%n != 0 {
		var can []string
		for _, d := range divisors(coils) {
			can = append(can, strconv.Itoa(d))
		}
		return calc.NewProblem("strings", strconv.Itoa(coils)+" coils do not split into "+strconv.Itoa(n)+" equal strings; give "+strings.Join(can, ", "))
	}
	load := StringsLoad(coils, n, impedance)
	out.SetSI("load", load)
	var choices []string
	for _, d := range divisors(coils) {
		choices = append(choices, ohms(StringsLoad(coils, d, impedance))+" ("+arrangement(coils, d)+")")
	}
	out.SetText("choices", strings.Join(choices, ", "))
	if calc.Under(load, in.SI("amp_minimum")) {
		out.Stop("{1:3 ohm} is under the amplifier's least of {amp_minimum}; take fewer strings", load)
	}
	out.Work("One string: "+strconv.Itoa(coils/n)+" × {impedance} = {1:3 ohm}", float64(coils/n)*impedance)
	out.Work(strconv.Itoa(n)+" such in parallel: {1:3 ohm} / "+strconv.Itoa(n)+" = {2:3 ohm}", float64(coils/n)*impedance, load)
	return nil
}

// arrangement says how coils are wired: "2 strings of 4", "all in series".
func arrangement(coils, n int) string {
	switch {
	case coils == 1:
		return "one coil"
	case n == 1:
		return "all in series"
	case n == coils:
		return "all in parallel"
	}
	return strconv.Itoa(n) + " strings of " + strconv.Itoa(coils/n)
}

// ohms writes a resistance to three figures.
func ohms(v float64) string { return calc.FormatUnit(v, 3, "ohm") }
