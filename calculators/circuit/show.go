package circuit

import (
	"math"

	"baybook/calculators/calc"
)

// show writes a number with its unit in the size that reads best: 3.2 A,
// 180 mA, 0 V.
func show(v float64, unit string) string {
	a := math.Abs(v)
	switch {
	case a < 0.5e-6:
		return "0 " + unit
	case (unit == "s" || unit == "A" || unit == "m") && a < 0.9995, unit != "s" && unit != "%" && unit != "d" && a < 0.1:
		return calc.FormatUnit(v*1e3, 3, "m"+unit)
	}
	return calc.FormatUnit(v, 3, unit)
}

// amps, volts, watts and ohms write the quantities of a circuit.
func amps(v float64) string  { return show(v, "A") }
func volts(v float64) string { return show(v, "V") }
func watts(v float64) string { return show(v, "W") }
func ohms(v float64) string  { return show(v, "ohm") }

// node writes a node's voltage so that small differences are still seen.
func nodeVolts(v float64) string {
	if math.Abs(v) < 1 {
		return volts(v)
	}
	return calc.FormatPlaces(v, 2) + " V"
}

// lost writes the drop of a wire in few letters: 128 mV, 0.5 mV, 1.24 V.
func lost(v float64) string {
	if v = math.Abs(v); v < 0.01 {
		return calc.FormatPlaces(1e3*v, 1) + " mV"
	}
	return volts(v)
}

// seconds writes a time; infinity is never.
func seconds(t float64) string {
	if math.IsInf(t, 1) {
		return "never"
	}
	return show(t, "s")
}

// names writes a list of parts: "F1", "F1 and F2", "F1, F2 and F3".
func (n *Network) names(list []int) string {
	s := ""
	for i, e := range list {
		switch {
		case i == 0:
		case i == len(list)-1:
			s += " and "
		default:
			s += ", "
		}
		s += n.Elements[e].Name
	}
	return s
}
