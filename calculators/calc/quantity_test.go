package calc_test

import (
	"strings"
	"testing"

	"baybook/calculators/calc"
)

var quantities = []struct {
	text  string
	value float64
	unit  string
	shown string
}{
	{"4", 4, "", "4"},
	{"4 m", 4, "m", "4 m"},
	{"13ft", 13, "ft", "13 ft"},
	{"  250 mA ", 250, "mA", "250 mA"},
	{"3%", 3, "%", "3 %"},
	{"-40C", -40, "C", "-40 °C"},
	{"−40 °C", -40, "C", "-40 °C"}, // a true minus sign, a degree sign
	{"+5 V", 5, "V", "+5 V"},
	{".5in", 0.5, "in", ".5 in"},
	{"5.", 5, "", "5."},
	{"1e3 Hz", 1000, "Hz", "1e3 Hz"},
	{"1.5E-2 m", 0.015, "m", "1.5E-2 m"},
	{"2 Ω", 2, "ohm", "2 Ω"},
	{"10µF", 10, "uF", "10 µF"},
	{"1.5mm²", 1.5, "mm2", "1.5 mm²"},
	{"6 N·m", 6, "Nm", "6 Nm"},
	{"50 lbf.in", 50, "lbf.in", "50 lb-in"},
	{"0 m", 0, "m", "0 m"},
	{"-0 m", 0, "m", "0 m"},
	{"1e-999", 0, "", "0"},
	// As the trade writes.
	{"93 lb-in", 93, "lbf.in", "93 lb-in"},
	{"93 lb·in", 93, "lbf.in", "93 lb-in"},
	{"93in-lb", 93, "lbf.in", "93 lb-in"},
	{"93 lbf-in", 93, "lbf.in", "93 lb-in"},
	{"7 ft-lb", 7, "lbf.ft", "7 lb-ft"},
	{"7 ft lb", 7, "lbf.ft", "7 lb-ft"},
	{"7 lb.ft", 7, "lbf.ft", "7 lb-ft"},
	{"104degF", 104, "F", "104 °F"},
	{"40 degC", 40, "C", "40 °C"},
	{"40 deg", 40, "deg", "40°"},
	{"3/4in", 0.75, "in", "3/4 in"},
	{"1 1/2in", 1.5, "in", "1 1/2 in"},
	{"1-1/2 in", 1.5, "in", "1 1/2 in"},
	{"13'", 13, "ft", "13 ft"},
	{"13ft6in", 13.5, "ft", "13 ft 6 in"},
	{"13 ft 6 in", 13.5, "ft", "13 ft 6 in"},
	{"13'6\"", 13.5, "ft", "13 ft 6 in"},
	{"13' 6 1/2\"", 13 + 6.5/12, "ft", "13 ft 6 1/2 in"},
	{"-13ft6in", -13.5, "ft", "-13 ft 6 in"},
	{"9\"", 9, "in", "9 in"},
	{"2h30m", 2.5, "h", "2 h 30 min"},
	{"2h 30min", 2.5, "h", "2 h 30 min"},
	{"1d12h", 1.5, "d", "1 d 12 h"},
	{"$95", 95, "", "$95"},
	{"$ 95", 95, "", "$95"},
	{"€95.50", 95.5, "", "€95.50"},
	{"CHF 95", 95, "", "CHF 95"},
}

func TestParseQuantity(t *testing.T) {
	for _, test := range quantities {
		q, msg := calc.ParseQuantity(test.text)
		if msg != "" {
			t.Errorf("%q refused: %s", test.text, msg)
			continue
		}
		if q.Value != test.value || q.Unit.Symbol != test.unit || q.Bare != (test.unit == "") || q.String() != test.shown {
			t.Errorf("%q = %v %q bare %v, shown %q; want %v %q, shown %q", test.text, q.Value, q.Unit.Symbol, q.Bare, q.String(),
				test.value, test.unit, test.shown)
		}
	}
}

// refusals are quantities that are not guessed at, and a word that the
// refusal must say.
var refusals = []struct{ text, says string }{
	{"", "nothing given"},
	{"   ", "nothing given"},
	{"1,5", "decimal point"},
	{"1,5 m", "decimal point"},
	{"1,000", "thousands"},
	{"0x10", "hexadecimal"},
	{"0X1p4 m", "hexadecimal"},
	{"Inf", "not a number"},
	{"-Infinity", "not a number"},
	{"NaN", "not a number"},
	{"1e999", "not a finite number"},
	{"m", "not a number"},
	{"--4", "not a number"},
	{"½ in", "not a number"},
	{"1_000", "not known"},
	{"6in13ft", "not known"},
	{"13ft6", "not known"},
	{"13ft6m", "not known"},
	{"2h30", "not known"},
	{"3/0in", "not known"},
	{"4V2A", "not known"},
	{"$95 h", "price with a unit"},
	{"4 mtr", "not known"},
	{"4 Mm", "did you mean mm?"},
	{"5 amp", "not known"},
	{"16 awgs", "did you mean AWG?"},
	{"16 AWG", "16 AWG is a wire gauge, which only a wire has"},
	{"1.2.3", "not known"},
}

func TestParseQuantityRefuses(t *testing.T) {
	for _, test := range refusals {
		if q, msg := calc.ParseQuantity(test.text); !strings.Contains(msg, test.says) {
			t.Errorf("%q gives %v, %q; want a refusal that says %q", test.text, q, msg, test.says)
		}
	}
}

// Conversions by definition: the international inch and pound of 1959, the
// circular mil, NIST SP 811 for the rest.
var conversions = []struct {
	text string
	to   string
	want float64
}{
	{"1 in", "mm", 25.4},
	{"1 ft", "m", 0.3048},
	{"1 kcmil", "mm2", 0.50670747909749778},
	{"211.6 kcmil", "mm2", 107.21930257703068},
	{"1 lb", "kg", 0.45359237},
	{"1 lbf.ft", "Nm", 1.3558179483314004},
	{"12 lbf.in", "lbf.ft", 1},
	{"1 ft3", "L", 28.316846592},
	{"212 F", "C", 100},
	{"32 F", "C", 0},
	{"-40 F", "C", -40},
	{"100 C", "F", 212},
	{"60 arcmin", "deg", 1},
	{"1.5 h", "min", 90},
	{"1 d", "h", 24},
	{"1 GPa", "MPa", 1000},
	{"250 mA", "A", 0.25},
	{"12.5 %", "%", 12.5},
}

func TestConvert(t *testing.T) {
	for _, test := range conversions {
		q, msg := calc.ParseQuantity(test.text)
		to, ok := calc.LookupUnit(test.to)
		if msg != "" || !ok || q.Unit.Dim != to.Dim {
			t.Fatalf("%s to %s: %s", test.text, test.to, msg)
		}
		got := calc.Convert(q.Value, q.Unit, to)
		if calc.Over(got, test.want) || calc.Under(got, test.want) {
			t.Errorf("%s is %.17g %s, want %.17g", test.text, got, test.to, test.want)
		}
		if back := calc.Convert(got, to, q.Unit); calc.Over(back, q.Value) || calc.Under(back, q.Value) {
			t.Errorf("%s there and back is %.17g", test.text, back)
		}
	}
}

// TestUnits holds the table of units to the list that queries promise.
func TestUnits(t *testing.T) {
	const promised = "m cm mm ft in mm2 kcmil A mA V mV ohm mohm W kW uF mH L ft3 cm2 m2 deg arcmin C F kg lb kN N px " +
		"Nm lbf.in lbf.ft Hz kHz ms s min h d dB % Ah MPa GPa"
	for symbol := range strings.FieldsSeq(promised) {
		u, ok := calc.LookupUnit(symbol)
		if !ok || u.Symbol != symbol || u.Dim == calc.None || !(u.Base > 0) {
			t.Errorf("unit %s is %+v, %v", symbol, u, ok)
		}
		if q, msg := calc.ParseQuantity("7 " + symbol); msg != "" || q.Unit != u {
			t.Errorf("7 %s is read as %v: %s", symbol, q, msg)
		}
	}
}

// FuzzQuantity: what is read reads back the same from what it is shown as.
func FuzzQuantity(f *testing.F) {
	for _, test := range quantities {
		f.Add(test.text)
	}
	for _, test := range refusals {
		f.Add(test.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, msg := calc.ParseQuantity(text)
		if msg != "" {
			return
		}
		again, msg := calc.ParseQuantity(q.String())
		if msg != "" || again != q {
			t.Errorf("%q reads as %v, which reads as %v (%s)", text, q, again, msg)
		}
	})
}
