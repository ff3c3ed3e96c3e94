package calc

import (
	"math"
	"strings"
)

// A Dimension is what a unit measures. Two units convert into each other only
// within one dimension.
type Dimension uint8

const (
	None Dimension = iota
	Length
	Area
	Volume
	Current
	Voltage
	Resistance
	Power
	Capacitance
	Inductance
	Angle
	Temperature
	Mass
	Force
	Torque
	Pressure
	Frequency
	Time
	Level
	Ratio
	Charge
	Pixels
	Speed
	ArealMass
)

// dimensionNames says each dimension in the words of an error message.
var dimensionNames = [...]string{
	None: "a plain number", Length: "a length", Area: "an area", Volume: "a volume",
	Current: "a current", Voltage: "a voltage", Resistance: "a resistance", Power: "a power",
	Capacitance: "a capacitance", Inductance: "an inductance", Angle: "an angle",
	Temperature: "a temperature", Mass: "a mass", Force: "a force", Torque: "a torque",
	Pressure: "a pressure", Frequency: "a frequency", Time: "a time", Level: "a level",
	Ratio: "a percentage", Charge: "a charge", Pixels: "a number of pixels",
	Speed: "a speed", ArealMass: "a mass per area",
}

// String says the dimension with its article: "a length".
func (d Dimension) String() string { return dimensionNames[d] }

// A Unit is a symbol with its size in the base unit of its dimension. Bases
// are the SI units, except that angles are in radians, levels in dB, ratios
// in parts of one and temperatures in degrees Celsius, which every formula of
// the trade uses.
type Unit struct {
	Symbol string
	Dim    Dimension
	// Base is what one of this unit is in the base unit.
	Base float64
	// Zero is the reading, in base units, at which this unit's scale is 0;
	// it is not 0 for degrees Fahrenheit alone.
	Zero float64
}

// metersPerInch and kilogramsPerPound are exact by the international yard and
// pound agreement of 1959.
const (
	metersPerInch     = 0.0254
	kilogramsPerPound = 0.45359237
	standardGravity   = 9.80665
	newtonsPerPound   = kilogramsPerPound * standardGravity
)

// units is every unit that a quantity may carry. AWG is not among them: it is
// a gauge number, not a multiple of anything (see wire.go).
var units = []Unit{
	{"", None, 1, 0},
	{"m", Length, 1, 0}, {"cm", Length, 1e-2, 0}, {"mm", Length, 1e-3, 0},
	{"ft", Length, 12 * metersPerInch, 0}, {"in", Length, metersPerInch, 0},
	{"m2", Area, 1, 0}, {"cm2", Area, 1e-4, 0}, {"mm2", Area, 1e-6, 0},
	{"kcmil", Area, math.Pi / 4 * 1e-3 * metersPerInch * metersPerInch, 0},
	{"L", Volume, 1e-3, 0}, {"ft3", Volume, 0.3048 * 0.3048 * 0.3048, 0},
	{"A", Current, 1, 0}, {"mA", Current, 1e-3, 0},
	{"V", Voltage, 1, 0}, {"mV", Voltage, 1e-3, 0},
	{"ohm", Resistance, 1, 0}, {"mohm", Resistance, 1e-3, 0},
	{"W", Power, 1, 0}, {"kW", Power, 1e3, 0},
	{"uF", Capacitance, 1e-6, 0}, {"mH", Inductance, 1e-3, 0},
	{"deg", Angle, math.Pi / 180, 0}, {"arcmin", Angle, math.Pi / 180 / 60, 0},
	{"C", Temperature, 1, 0}, {"F", Temperature, 5.0 / 9, -32 * 5.0 / 9},
	{"kg", Mass, 1, 0}, {"lb", Mass, kilogramsPerPound, 0},
	{"N", Force, 1, 0}, {"kN", Force, 1e3, 0},
	{"Nm", Torque, 1, 0}, {"lbf.in", Torque, newtonsPerPound * metersPerInch, 0},
	{"lbf.ft", Torque, newtonsPerPound * 12 * metersPerInch, 0},
	{"MPa", Pressure, 1e6, 0}, {"GPa", Pressure, 1e9, 0},
	{"Hz", Frequency, 1, 0}, {"kHz", Frequency, 1e3, 0},
	{"s", Time, 1, 0}, {"ms", Time, 1e-3, 0}, {"min", Time, 60, 0},
	{"h", Time, 3600, 0}, {"d", Time, 86400, 0},
	{"dB", Level, 1, 0}, {"%", Ratio, 1e-2, 0}, {"Ah", Charge, 3600, 0},
	{"px", Pixels, 1, 0},
	{"m/s", Speed, 1, 0}, {"kg/m2", ArealMass, 1, 0},
}

// spellings are other ways in which people and keyboards write a unit. Other
// marks of a product are made a hyphen first (see plainUnit).
var spellings = []struct{ as, is string }{
	{"Ω", "ohm"}, {"Ω", "ohm"}, {"mΩ", "mohm"}, {"mΩ", "mohm"},
	{"µF", "uF"}, {"μF", "uF"}, {"mm²", "mm2"}, {"cm²", "cm2"}, {"m²", "m2"}, {"ft³", "ft3"},
	{"sqmm", "mm2"}, {"kg/m²", "kg/m2"},
	{"°C", "C"}, {"°F", "F"}, {"degC", "C"}, {"degF", "F"}, {"℃", "C"}, {"℉", "F"},
	{"°", "deg"}, {"′", "arcmin"}, {"lbs", "lb"},
	{"N·m", "Nm"}, {"N.m", "Nm"}, {"N-m", "Nm"},
	{"lb-in", "lbf.in"}, {"in-lb", "lbf.in"}, {"lbf-in", "lbf.in"}, {"in-lbf", "lbf.in"}, {"in-lbs", "lbf.in"}, {"lbin", "lbf.in"}, {"inlb", "lbf.in"},
	{"lb-ft", "lbf.ft"}, {"ft-lb", "lbf.ft"}, {"lbf-ft", "lbf.ft"}, {"ft-lbf", "lbf.ft"}, {"ft-lbs", "lbf.ft"}, {"lbft", "lbf.ft"}, {"ftlb", "lbf.ft"},
}

// plainUnit is a torque's unit as typed with one mark for its product: "ft lb"
// is ft-lb, "lb·in" is lb-in. Other units come back as they are.
func plainUnit(s string) string {
	if !strings.HasPrefix(s, "lb") && !strings.HasSuffix(s, "lb") {
		return s
	}
	for _, mark := range [...]string{" ", "\u00a0", "·", "."} {
		if a, b, ok := strings.Cut(s, mark); ok && (a == "lb" || b == "lb") {
			return a + "-" + b
		}
	}
	return s
}

// shownUnits are the units that people read in another way than links have
// them; the others are shown by their symbol.
var shownUnits = []struct{ symbol, shown string }{
	{"mm2", "mm²"}, {"cm2", "cm²"}, {"m2", "m²"}, {"ft3", "ft³"}, {"ohm", "Ω"}, {"mohm", "mΩ"}, {"uF", "µF"},
	{"C", "°C"}, {"F", "°F"}, {"lbf.in", "lb-in"}, {"lbf.ft", "lb-ft"}, {"kg/m2", "kg/m²"}, {"deg", "°"},
}

// ShownUnit is a unit's symbol as people read it: "mm²" for mm2.
func ShownUnit(symbol string) string {
	for i := range shownUnits {
		if shownUnits[i].symbol == symbol {
			return shownUnits[i].shown
		}
	}
	return symbol
}

// LookupUnit finds a unit by its symbol or another spelling of it.
func LookupUnit(symbol string) (Unit, bool) {
	if u := unitOf(symbol); u != nil {
		return *u, true
	}
	return Unit{}, false
}

// unitOf is LookupUnit, nil where there is no such unit.
func unitOf(symbol string) *Unit {
	symbol = plainUnit(symbol)
	for i := range spellings {
		if spellings[i].as == symbol {
			symbol = spellings[i].is
			break
		}
	}
	for i := range units {
		if units[i].Symbol == symbol {
			return &units[i]
		}
	}
	return nil
}

// UnitsOf lists the units of one dimension in the order of the table, for a
// field's unit choice and for error messages.
func UnitsOf(d Dimension) []Unit {
	var of []Unit
	for i := range units {
		if units[i].Dim == d {
			of = append(of, units[i])
		}
	}
	return of
}

// Convert turns v of one unit into another of the same dimension. A value
// already in the wanted unit comes back unchanged, bit for bit.
func Convert(v float64, from, to Unit) float64 { return convert(v, &from, &to) }

func convert(v float64, from, to *Unit) float64 {
	if from.Symbol == to.Symbol {
		return v
	}
	if from.Zero == to.Zero {
		return v * (from.Base / to.Base)
	}
	return (v*from.Base + from.Zero - to.Zero) / to.Base
}

// mustUnit is for the unit names that a calculator's own list holds; the
// list's validator proves that they exist.
func mustUnit(symbol string) *Unit {
	u := unitOf(symbol)
	if u == nil {
		panic("calc: no unit " + symbol)
	}
	return u
}
