package electrical

import (
	"math"

	"baybook/calculators/calc"
)

// LEDResistor answers which resistor a string of LEDs needs.
var LEDResistor = &calc.Calculator{
	Name:     "led-resistor",
	Title:    "Resistor for a string of LEDs",
	Question: "Which resistor does the LED need?",
	Doc:      "The next resistor that is made, the current that it really lets through, and the size that stays cool.",
	Decides:  "resistor",
	Inputs: []calc.Input{
		{Name: "supply", Label: "Supply", Unit: "V", Min: 3, Max: 60, Default: "14.4",
			Help: "The highest that the circuit sees: 14.4 V or more with the engine running, not 12 V."},
		{Name: "forward", Label: "Forward voltage", Unit: "V", Min: 1, Max: 5, Default: "2",
			Help: "Of one LED, off its data sheet: about 2 V red or yellow, about 3 V blue, white or green."},
		{Name: "count", Label: "LEDs in series", Kind: calc.Count, Min: 1, Max: 20, Default: "1",
			Help: "How many stand one behind the other. Strings side by side get a resistor each."},
		{Name: "current", Label: "Current", Unit: "mA", Min: 0.5, Max: 2000, Default: "20",
			Help: "At most what the LED's data sheet allows; an indicator is bright enough at 2 mA to 10 mA."},
	},
	Outputs: []calc.Output{
		{Name: "resistor", Label: "Resistor", Unit: "ohm", Help: "next value of the E24 series at or above"},
		{Name: "rating", Label: "Size of resistor", Unit: "W", Help: "at least twice the heat in it"},
		{Name: "actual", Label: "Current through the LED", Unit: "mA"},
		{Name: "power", Label: "Heat in the resistor", Unit: "W"},
		{Name: "exact", Label: "Exact value", Unit: "ohm", Figures: 4},
	},
	Sources: []calc.Source{
		{Text: "R = (supply − n × forward) / current, Ohm's law"},
		{Text: "E24 values, IEC 60063", Standing: "from memory"},
		{Text: "A resistor rated for at least twice its heat", Standing: "common practice, no source"},
	},
	Limits: []string{
		"The forward voltage spreads from LED to LED and falls with heat: leave a few volts for the resistor.",
		"A vehicle's supply spikes far over its charging voltage; a string without a protection diode may not last.",
	},
	Cautions: []string{
		"A resistor at its limit burns fingers and melts loom tape: keep it off insulation and trim.",
		"Lamps that the law asks for keep their approved units; an LED in place of one is not road legal everywhere.",
		"Put a fuse in front as for any other load.",
	},
	Run:    ledResistor,
	Figure: drawLEDResistor,
}

// e24 is one decade of the E24 series of IEC 60063, times ten.
var e24 = []float64{10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30,
	33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91}

// resistorSizes are the power ratings in W that resistors come in.
var resistorSizes = []float64{0.125, 0.25, 0.5, 1, 2, 3, 5, 10}

// NextE24 is the smallest value of the E24 series, in ohm, at or above ohms,
// which is positive.
func NextE24(ohms float64) float64 {
	decade := int(math.Floor(math.Log10(ohms))) - 1 // of values written 10 to 91
	for d := decade - 1; ; d++ {
		for _, v := range e24 {
			if v = timesTen(v, d); !calc.Under(v, ohms) {
				return v
			}
		}
	}
}

// timesTen is v × 10^n, dividing for a negative n so that 62 × 10^-1 is the
// 6.2 that a reader would type.
func timesTen(v float64, n int) float64 {
	if n < 0 {
		return v / math.Pow10(-n)
	}
	return v * math.Pow10(n)
}

func ledResistor(in *calc.Values, out *calc.Result) *calc.Problem {
	supply, leds := in.SI("supply"), float64(in.Int("count"))*in.SI("forward")
	if !calc.Over(supply, leds) {
		return calc.NewProblem("supply", out.Fill("{supply} is not above the {1:4 V} that {count} × {forward} take; put fewer LEDs in series", leds))
	}
	left := supply - leds
	exact := left / in.SI("current")
	resistor := NextE24(exact)
	actual := left / resistor
	power := actual * left
	out.SetSI("exact", exact)
	out.SetSI("resistor", resistor)
	out.SetSI("actual", actual)
	out.SetSI("power", power)
	out.Work("Left for the resistor: {supply} − {count} × {forward} = {1:4 V}", left)
	out.Work("Exact: {1:4 V} / {current} = {2:4 ohm}, next E24 value {3:3 ohm}", left, exact, resistor)
	out.Work("Current through the LED: {1:4 V} / {2:3 ohm} = {3:4 mA}", left, resistor, 1e3*actual)
	out.Work("Heat: {1:4 V} × {2:4 mA} = {3:4 W}, twice that {4:4 W}", left, 1e3*actual, power, 2*power)
	for _, size := range resistorSizes {
		if !calc.Under(size, 2*power) {
			out.SetSI("rating", size)
			return nil
		}
	}
	out.Stop("no resistor is large enough: it would turn {1:3 W} into heat, and none up to 10 W takes twice that; put more LEDs "+
		"in series or use a constant-current driver", power)
	return nil
}
