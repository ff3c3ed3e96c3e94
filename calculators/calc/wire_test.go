package calc_test

import (
	"math"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

// gauges are diameter in mm and area in mm2 by AWG number as an electronics
// textbook (Floyd) and ASTM B258 print them.
var gauges = []struct {
	text     string
	number   int
	diameter float64
	area     float64
}{
	{"4/0 AWG", -3, 11.68, 107.2},
	{"3/0 AWG", -2, 10.40, 85.03},
	{"2/0 AWG", -1, 9.266, 67.43},
	{"1/0 AWG", 0, 8.251, 53.48},
	{"1 AWG", 1, 7.348, 42.41},
	{"4 AWG", 4, 5.189, 21.15},
	{"10 AWG", 10, 2.588, 5.261},
	{"12 AWG", 12, 2.053, 3.309},
	{"16 AWG", 16, 1.291, 1.309},
	{"18 AWG", 18, 1.024, 0.823},
	{"24 AWG", 24, 0.5106, 0.2047},
	{"30 AWG", 30, 0.2546, 0.05093},
}

func TestAWG(t *testing.T) {
	for _, g := range gauges {
		area := calc.AWGArea(g.number)
		if math.Abs(area/g.area-1) > 5e-4 {
			t.Errorf("%s is %.5g mm2, published %v", g.text, area, g.area)
		}
		if d := math.Sqrt(4 * area / math.Pi); math.Abs(d/g.diameter-1) > 5e-4 {
			t.Errorf("%s is %.5g mm thick, published %v", g.text, d, g.diameter)
		}
		if name := calc.AWGName(g.number); name != g.text {
			t.Errorf("AWG number %d is named %s", g.number, name)
		}
		for _, spelling := range []string{g.text, strings.ReplaceAll(g.text, " ", ""), strings.ToLower(g.text), " " + g.text + " "} {
			w, msg := calc.ParseWire(spelling)
			if msg != "" || !w.AWG || w.Gauge != g.number || w.Area != area || w.Text != g.text {
				t.Errorf("%q reads as %+v: %s", spelling, w, msg)
			}
		}
	}
}

// TestAWGSteps holds the law of ASTM B258: three numbers double the area,
// six double the diameter, each within 0.3 %.
func TestAWGSteps(t *testing.T) {
	for n := -3; n+6 <= 30; n++ {
		if r := calc.AWGArea(n) / calc.AWGArea(n+3); math.Abs(r-2.0050) > 1e-3 {
			t.Errorf("AWG %d to %d: area by %.5f", n+3, n, r)
		}
	}
}

func TestParseWire(t *testing.T) {
	for _, test := range []struct {
		text string
		area float64
		as   string
	}{
		{"1.5mm2", 1.5, "1.5 mm²"},
		{"16 mm2", 16, "16 mm²"},
		{"14ga", calc.AWGArea(14), "14 AWG"},
		{"2/0 ga", calc.AWGArea(-1), "2/0 AWG"},
		{"20 kcmil", 10.134149581949955, "20 kcmil"},
		{"0.1 cm2", 10, "0.1 cm²"},
		{"0 AWG", calc.AWGArea(0), "1/0 AWG"},
		{"0000AWG", calc.AWGArea(-3), "4/0 AWG"},
	} {
		w, msg := calc.ParseWire(test.text)
		if msg != "" || calc.Over(w.Area, test.area) || calc.Under(w.Area, test.area) || w.Text != test.as {
			t.Errorf("%q reads as %+v: %s", test.text, w, msg)
		}
	}
	for _, test := range []struct{ text, says string }{
		{"16", "16 AWG or 16 mm2"},
		{"16.5", "mm2"},
		{"1/0", "say 1/0 AWG"},
		{"31 AWG", "AWG runs"},
		{"5/0 AWG", "AWG runs"},
		{"-1 AWG", "AWG runs"},
		{"016 AWG", "AWG runs"},
		{"1.5 AWG", "AWG runs"},
		{"AWG", "AWG runs"},
		{"3 m", "a length"},
		{"1,5 mm2", "decimal point"},
		{"0x10 mm2", "hexadecimal"},
		{"16 AGW", "did you mean AWG?"},
	} {
		if w, msg := calc.ParseWire(test.text); !strings.Contains(msg, test.says) {
			t.Errorf("%q gives %+v, %q; want a refusal that says %q", test.text, w, msg, test.says)
		}
	}
}
