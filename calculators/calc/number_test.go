package calc_test

import (
	"math"
	"testing"

	"baybook/calculators/calc"
)

func TestShow(t *testing.T) {
	for _, test := range []struct {
		v       float64
		figures int
		want    string
	}{
		{0.82876, 3, "0.829"},
		{12.6, 4, "12.6"},
		{1234.6, 3, "1235"},   // digits before the point stay whole
		{123456, 2, "123456"}, // likewise
		{999.96, 4, "1000"},
		{9.996, 3, "10"},
		{0.0001234, 2, "0.00012"},
		{100, 3, "100"},
		{1.50, 3, "1.5"},
		{-0.0004, 3, "-0.0004"},
		{-1e-15, 3, "0"},
		{math.Copysign(0, -1), 3, "0"},
		{math.NaN(), 3, "0"},
		{math.Inf(1), 3, "0"},
		{2.5, 0, "2"},
	} {
		if got := calc.Format(test.v, test.figures); got != test.want {
			t.Errorf("Format(%v, %d) = %q, want %q", test.v, test.figures, got, test.want)
		}
	}
}

func TestShowFixed(t *testing.T) {
	for _, test := range []struct {
		v    float64
		want string
	}{
		{313.5, "313.50"}, {0, "0.00"}, {-0.001, "0.00"}, {-0.006, "-0.01"}, {math.Copysign(0, -1), "0.00"},
		{1e6, "1000000.00"}, {math.Inf(-1), "0.00"}, {-100, "-100.00"},
	} {
		if got := calc.FormatFixed(test.v, 2); got != test.want {
			t.Errorf("FormatFixed(%v, 2) = %q, want %q", test.v, got, test.want)
		}
	}
}

// TestLimits: a limit exactly met is met, whatever the rounding on the way,
// and one really passed is passed.
func TestLimits(t *testing.T) {
	if calc.Over(8/0.8, 10) || calc.Under(8/0.8, 10) || calc.Over(0.1+0.2, 0.3) {
		t.Error("a limit exactly met does not count as met")
	}
	if !calc.Over(10.0001, 10) || !calc.Under(9.9999, 10) || !calc.Over(1e-12, 0) || !calc.Under(-1e-12, 0) {
		t.Error("a limit passed does not count as passed")
	}
	if calc.Over(0, 0) || calc.Under(0, 0) || !calc.Over(-1, -2) || !calc.Under(-40.1, -40) {
		t.Error("zero or negative limits go wrong")
	}
}
