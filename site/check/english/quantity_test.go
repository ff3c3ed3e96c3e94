package english

import (
	"fmt"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

func TestQuantities(t *testing.T) {
	for text, want := range map[string]string{
		"a drop of 0.41 V at 6 A":          "0.41 V|6 A",
		"14AWG, 25%, 3 mm2 and 9 N·m":      "14 AWG|25 %|3 mm2|9 Nm",
		"between -5 C and +12.5 V":         "-5 C|+12.5 V",
		"M6, GR-02, 1.4.3, ISO 7200, 4:1":  "7200",
		"11 to 13 V":                       "11|13 V",
		"20-30 mm":                         "20|30 mm",
		"300 mm (12 in) or 3 metres":       "300 mm|12 in|3",
		"at 75 % it lasts 25.4 d, in time": "75 %|25.4 d",
		"a 2/0AWG cable, 14 ga wire":       "2/0 AWG|14 AWG",
		"lists 1,2,3 of it and 1,500 mm":   "1|2|3|1,500 mm",
		"12 Vans":                          "12",
	} {
		var got []string
		for _, q := range Quantities(text) {
			got = append(got, strings.TrimSpace(fmt.Sprint(text[q.Start:q.NumberEnd], " ", q.Unit.Symbol)))
		}
		if strings.Join(got, "|") != want {
			t.Errorf("%q: %s, not %s", text, strings.Join(got, "|"), want)
		}
	}
}

func TestTolerates(t *testing.T) {
	for _, tt := range []struct {
		text string
		v    float64
		want bool
	}{
		{"0.41 V", 0.406, true}, {"0.41 V", 0.414, true}, {"0.41 V", 0.416, false},
		{"0.4 V", 0.406, true}, {"0 V", 0.4, false}, {"0 V", 0, true},
		{"20 mm", 21.6, false}, {"22 mm", 21.6, true}, {"0.125 A", 0.125, true},
	} {
		q := Quantities(tt.text)[0]
		if q.Tolerates(tt.v) != tt.want {
			t.Errorf("%s for %g: %t", tt.text, tt.v, !tt.want)
		}
	}
}

// Every spelling of a unit that a field reads is read in running text with the
// same value in the same unit.
func TestTextReadsAsFieldsDo(t *testing.T) {
	for _, spelling := range []string{
		"4 m", "4m", "40cm", "3 mm", "13ft", "6 in", "2.5 mm2", "2.5mm²", "250 kcmil", "8 A", "250mA", "12.6 V", "50 mV", "4 ohm", "4 Ω", "4 Ω",
		"2 mohm", "2 mΩ", "75 W", "1.2kW", "100 uF", "100 µF", "100 μF", "2 mH", "20 L", "1.5 ft3", "1.5 ft³", "220 cm2", "1 m²", "30 deg", "30°",
		"5 arcmin", "5′", "40 C", "40 °C", "40 degC", "40 ℃", "104 F", "104 °F", "104degF", "3 kg", "5 lb", "5 lbs", "2 kN", "90 N", "720 px", "9 Nm",
		"9 N·m", "9 N-m", "80 lbf.in", "80 lb-in", "80 lb·in", "80 in-lb", "80 lbf-in", "7 lbf.ft", "7 lb-ft", "7 ft-lb", "7 ft lb", "7 lbf-ft", "80 Hz",
		"1 kHz", "5 ms", "5 s", "5 min", "5 h", "5 d", "3 dB", "3%", "3 %", "60 Ah", "205 GPa", "300 MPa", "3.5 kg/m2",
		"3/4in", "3/4 in", "1 1/2in", "1 1/2 in", "1-1/2 in", "13'", "13ft6in", "13 ft 6 in", "13'6\"", "13' 6\"", "13' 6 1/2\"", "2h30m", "2 h 30 min", "4.50 m",
	} {
		want, msg := calc.ParseQuantity(spelling)
		if msg != "" {
			t.Errorf("%s: a field refuses it: %s", spelling, msg)
			continue
		}
		for _, text := range []string{spelling, "take " + spelling + " of it", "(" + spelling + "), then", spelling + ".\n"} {
			got := Quantities(text)
			if len(got) != 1 || got[0].Value != want.Value || got[0].Unit != want.Unit || text[got[0].Start:got[0].End] != spelling {
				t.Errorf("%q: %+v, a field reads %+v", text, got, want)
			}
		}
	}
	for _, spelling := range []string{"4,5 m", "12,25 V", "0,1234 A"} { // a field's decimal comma
		point, _ := calc.PointForComma(spelling)
		want, _ := calc.ParseQuantity(point)
		if got := Quantities("at " + spelling + "."); len(got) != 1 || got[0].Value != want.Value || got[0].Unit != want.Unit {
			t.Errorf("%q: %+v, a field reads %+v", spelling, got, want)
		}
	}
	for _, spelling := range []string{"16 AWG", "14ga", "14 gauge", "1/0AWG", "4/0 AWG"} {
		want, _ := calc.ParseWire(spelling)
		if got := Quantities("a " + spelling + " wire"); len(got) != 1 || !got[0].IsGauge() || got[0].Value != float64(want.Gauge) {
			t.Errorf("%q: %+v, a field reads gauge %d", spelling, got, want.Gauge)
		}
	}
}
