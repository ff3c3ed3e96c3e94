package english

import (
	"fmt"
	"strings"
	"testing"
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
