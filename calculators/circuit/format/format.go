// Package format writes the quantities of a circuit for people: 3.2 A,
// 180 mA, 0 V. Numbers are in SI units.
package format

import (
	"math"
	"strconv"

	"baybook/calculators/calc"
)

// Quantity writes a number with its unit in the size that reads best: 3.2 A,
// 180 mA, 0 V.
func Quantity(v float64, unit string) string {
	a := math.Abs(v)
	switch {
	case a < 0.5e-6:
		return "0 " + unit
	case (unit == "s" || unit == "A" || unit == "m") && a < 0.9995, unit != "s" && unit != "%" && unit != "d" && a < 0.1:
		return calc.FormatUnit(v*1e3, 3, "m"+unit)
	}
	return calc.FormatUnit(v, 3, unit)
}

// Amps, Volts, Watts and Ohms write a current, a voltage, a power and a
// resistance.
func Amps(v float64) string  { return Quantity(v, "A") }
func Volts(v float64) string { return Quantity(v, "V") }
func Watts(v float64) string { return Quantity(v, "W") }
func Ohms(v float64) string  { return Quantity(v, "ohm") }

// NodeVolts writes a node's voltage so that small differences are still seen.
func NodeVolts(v float64) string {
	if math.Abs(v) < 1 {
		return Volts(v)
	}
	return calc.FormatPlaces(v, 2) + " V"
}

// Drop writes the drop of a wire in few letters: 128 mV, 0.5 mV, 1.24 V.
func Drop(v float64) string {
	if v = math.Abs(v); v < 0.01 {
		return calc.FormatPlaces(1e3*v, 1) + " mV"
	}
	return Volts(v)
}

// Seconds writes a time; infinity is never.
func Seconds(t float64) string {
	if math.IsInf(t, 1) {
		return "never"
	}
	return Quantity(t, "s")
}

// Exact writes a number so that reading it gives it again.
func Exact(v float64) string { return strconv.FormatFloat(v, 'g', -1, 64) }
