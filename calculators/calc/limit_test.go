package calc_test

import (
	"strings"
	"testing"

	"baybook/calculators/calc"
)

func TestLimit(t *testing.T) {
	for _, test := range []struct {
		query, says string
		typed       string
		verdict     calc.Verdict
		read        bool
	}{
		{"max=100mV", "at most 100 mV", "80", calc.OK, true},
		{"max=100mV", "at most 100 mV", "100", calc.OK, true}, // exactly met is met
		{"max=100mV", "at most 100 mV", "0.1 V", calc.OK, true},
		{"max=100mV", "at most 100 mV", "0.101 V", calc.Stop, true},
		{"max=100mV", "at most 100 mV", "-5", calc.Check, true},
		{"min=11.8V&max=12.9V", "11.8 V to 12.9 V", "11.79", calc.Stop, true},
		{"min=11.8V&max=12.9V", "11.8 V to 12.9 V", "12500 mV", calc.OK, true},
		{"min=11800mV&max=12.9V", "11800 mV to 12.9 V", "12", calc.OK, true}, // a bare number is in the last unit named
		{"min=5ohm", "at least 5 Ω", "4.9 Ω", calc.Stop, true},
		{"unit=V", "no limit", "12.6", calc.OK, true},
		{"max=100mV&unit=V", "at most 100 mV", "0.05", calc.OK, true},
		{"max=100mV", "at most 100 mV", "3 A", calc.Check, false},
		{"max=100mV", "at most 100 mV", "", calc.Check, false},
		{"max=100mV", "at most 100 mV", "0,1", calc.OK, true},       // a decimal comma
		{"max=100mV", "at most 100 mV", "0,100", calc.Check, false}, // 0.100 or 100?
		{"max=100mV", "at most 100 mV", "-150", calc.Stop, true},
		{"max=93lb-in", "at most 93 lb-in", "7 ft lb", calc.OK, true},
		{"max=8Nm", "at most 8 Nm", "71 in-lb", calc.Stop, true},
	} {
		l, msg := calc.ParseLimit(pairsOf(t, test.query))
		if msg != "" || l.String() != test.says {
			t.Errorf("%s reads as %q: %s", test.query, l.String(), msg)
			continue
		}
		if v, text, read := l.Judge(test.typed); v != test.verdict || read != test.read || text == "" {
			t.Errorf("%s, %q typed: %v, %q, read %v; want %v, %v", test.query, test.typed, v, text, read, test.verdict, test.read)
		}
	}
	for query, says := range map[string]string{
		"max=100mV&max=50mV": "given twice",
		"most=100mV":         "takes min, max and unit",
		"max=1,5V":           "max: 1,5V has a comma",
		"unit=volt":          "not a known unit",
		"min=13V&max=12V":    "above max",
		"min=1A&max=12V":     "is a current",
		"max=12V&unit=A":     "is a voltage",
	} {
		if _, msg := calc.ParseLimit(pairsOf(t, query)); !strings.Contains(msg, says) {
			t.Errorf("%s: %q, want %q", query, msg, says)
		}
	}
}
