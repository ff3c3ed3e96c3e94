package calc_test

import (
	"testing"

	"baybook/calculators/calc"
)

func TestNearest(t *testing.T) {
	names := []string{"current", "length", "temperature", "sheet_width", "sheet_height", "wire"}
	for word, want := range map[string]string{
		"curent": "current", "lenght": "length", "Wire": "wire", "temp": "temperature", "sheet": "", "x": "", "voltage": "", "": "",
	} {
		if got := calc.Nearest(word, names); got != want {
			t.Errorf("nearest to %q is %q, want %q", word, got, want)
		}
	}
	// A single wrong letter is like no single right one, so none is offered.
	if got := calc.Nearest("K", []string{"m", "A", "V"}); got != "" {
		t.Errorf("%q is offered for K", got)
	}
}
