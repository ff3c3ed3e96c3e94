package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

func TestRead(t *testing.T) {
	for _, test := range []struct {
		input, text string
		num         float64
		shown       string
	}{
		{"voltage", "14.4", 14.4, "14.4 V"},
		{"voltage", "14400mV", 14.4, "14400 mV"},
		{"voltage", "30", 30, "30 V"},
		{"voltage", "00000000000014.40000", 14.4, "14.4 V"}, // longer than a drawing has room for
		{"current", "0", 0, "0 A"},
		{"current", "-4.9e-324 mA", 0, "-4.9e-324 mA"}, // underflows: not a negative zero
		{"lamps", "3", 3, "3"},
		{"lamps", "3.0", 3, "3.0"},
		{"fuse", "7.5A", 7.5, "7.5 A"},
		{"fuse", "7500 mA", 7.5, "7500 mA"},
		{"air", "32F", 0, "32 °F"},
		{"air", "-40", -40, "-40 °C"},
		{"wire", "1.5 mm2", 1.5, "1.5 mm²"},
	} {
		v, msg := lamp.Input(test.input).Read(test.text)
		if msg != "" || math.Abs(v.Num-test.num) > 1e-12 || math.Signbit(v.Num) != (test.num < 0) || v.Text != test.shown {
			t.Errorf("%s=%q reads as %v, %q: %s", test.input, test.text, v.Num, v.Text, msg)
		}
	}
	if v, msg := lamp.Input("cap").Read(" Push "); msg != "" || v.Text != "push" {
		t.Errorf("cap reads as %+v: %s", v, msg)
	}
	if v, msg := lamp.Input("marks").Read("0.5, 100cm ,3"); msg != "" || !slices.Equal(v.List, []float64{0.5, 1, 3}) || v.Text != "0.5 m, 100 cm, 3 m" {
		t.Errorf("marks read as %+v: %s", v, msg)
	}
	v, msg := lamp.Input("loom").Read("2x2.4, 1 × 0.35 cm")
	if msg != "" || len(v.Strands) != 2 || v.Strands[0].Count != 2 || v.Strands[0].Diameter != 2.4 || calc.Over(v.Strands[1].Diameter, 3.5) {
		t.Errorf("loom reads as %+v: %s", v, msg)
	}
}

func TestReadRefuses(t *testing.T) {
	for _, test := range []struct{ input, text, says string }{
		{"voltage", "", "give 1 V to 30 V"},
		{"voltage", "31", "31 V is outside 1 V to 30 V"},
		{"voltage", "31000 mV", "31000 mV is outside 1 V to 30 V"},
		{"voltage", "0.999999", "outside"},
		{"voltage", "12 A", "12 A is a current; give a voltage in V, mV"},
		{"voltage", "1,2", "decimal point"},
		{"voltage", "bright", "is not a number (1 V to 30 V)"},
		{"current", "-0.1", "outside"},
		{"lamps", "2.5", "whole number"},
		{"lamps", "1/2", "not a whole number"},
		{"lamps", "2 m", "a number without a unit"},
		{"lamps", "11", "outside 1 to 10"},
		{"fuse", "8", "one of 5, 7.5, 10 A"},
		{"cap", "skrew", "did you mean screw?"},
		{"cap", "bayonet", "one of push, screw"},
		{"wire", "16", "16 AWG or 16 mm2"},
		{"wire", "300 mm2", "a wire from 0.05 mm² to 120 mm², or 30 AWG to 4/0 AWG"},
		{"marks", "1,,2", "nothing given"},
		{"marks", "1,2,3,4", "at most 3"},
		{"marks", "1,200", "outside"},
		{"loom", "3", "has no count"},
		{"loom", "0x3", "no whole count"},
		{"loom", "1.5x3", "no whole count"},
		{"loom", "5x3,4x3", "more than 8 wires"},
		{"loom", "2x", "nothing given"},
		{"loom", "2x3,", "has no count"},
		{"loom", "2x0.1", "outside"},
	} {
		if v, msg := lamp.Input(test.input).Read(test.text); !strings.Contains(msg, test.says) {
			t.Errorf("%s=%q gives %+v, %q; want a refusal that says %q", test.input, test.text, v, msg, test.says)
		}
	}
}

// TestAccepts holds the gauges named to the bounds of the input.
func TestAccepts(t *testing.T) {
	thin := calc.Input{Name: "wire", Kind: calc.Wire, Min: calc.AWGArea(26), Max: calc.AWGArea(-3)}
	if got := thin.Accepts(); !strings.HasSuffix(got, "or 26 AWG to 4/0 AWG") {
		t.Errorf("accepts %s", got)
	}
	if _, msg := thin.Read("26 AWG"); msg != "" {
		t.Errorf("its own bound is refused: %s", msg)
	}
	if _, msg := thin.Read("27 AWG"); msg == "" {
		t.Error("27 AWG is accepted under a bound of 26 AWG")
	}
}

func TestAnswerRefuses(t *testing.T) {
	for _, test := range []struct{ query, says string }{
		{"volt=3", "did you mean"},
		{"brightness=3", "its inputs are voltage, current"},
		{"voltage=3&voltage=4", "voltage: given twice"},
		{"cap=screw&lamps=7", "lamps: seven do not screw"},
		{"voltage=99", "voltage: 99 V is outside"},
	} {
		_, r, problems := lamp.Answer(pairsOf(t, test.query))
		if r != nil || len(problems) == 0 || !strings.Contains(problems[0].Error(), test.says) {
			t.Errorf("%s gives %v, %v; want a refusal that says %q", test.query, r, problems, test.says)
		}
	}
}

// TestEndless: a formula that leaves the finite numbers is a refusal.
func TestEndless(t *testing.T) {
	c := *lamp
	for _, v := range []float64{math.Inf(1), math.NaN()} {
		c.Run = func(_ *calc.Values, out *calc.Result) *calc.Problem {
			out.Set("power", v)
			return nil
		}
		if _, r, problems := c.Answer(nil); r != nil || !strings.Contains(problems[0].Error(), "power has no finite value") {
			t.Errorf("%v: %v, %v", v, r, problems)
		}
	}
}
