// Package electrical holds the calculators for wire, fuse, ground, standby
// and supply, and the formulas behind them for others to call. Nothing changes a
// calculator, so goroutines may share it.
package electrical

import (
	"math"

	"baybook/calculators/calc"
)

// A Material is what a conductor is made of.
type Material struct {
	Name string
	// Resistivity at 20 °C, ohm·m.
	Resistivity float64
	// Alpha is the temperature coefficient at 20 °C, per K.
	Alpha float64
}

// copperResistivity is 1/58 ohm·mm²/m, 100 % IACS, IEC 60028.
const copperResistivity = 1e-6 / 58

// Materials are the conductors that a run may be made of: copper IEC 60028;
// copper-clad aluminium class 10A, 62.9 % IACS, ASTM B566; aluminium 61 %
// IACS, ASTM B233.
var Materials = []Material{
	{"copper", copperResistivity, 0.00393},
	{"cca", copperResistivity / 0.629, 0.00400},
	{"aluminium", copperResistivity / 0.61, 0.00403},
}

// MaterialNamed finds a material; copper where the name is unknown.
func MaterialNamed(name string) Material {
	for _, m := range Materials {
		if m.Name == name {
			return m
		}
	}
	return Materials[0]
}

// Stranding is what stranding adds to the resistance of a conductor, practice
// under IEC 60228 (class 2: 1.02 to 1.04).
const Stranding = 1.02

// At is the resistivity in ohm·m at a temperature in °C:
// ρ(T) = ρ20·(1 + α(T − 20)).
func (m Material) At(celsius float64) float64 {
	return m.Resistivity * (1 + m.Alpha*(celsius-20))
}

// ConductorResistance is the resistance in ohm of a stranded conductor,
// length in m, area in m²: R = 1.02·ρ(T)·L/A.
func ConductorResistance(m Material, celsius, length, area float64) float64 {
	return Stranding * m.At(celsius) * length / area
}

// A Size is a conductor size that can be bought.
type Size struct {
	Name string
	Area float64 // mm2
}

// gaugeNumbers are the AWG sizes that a shop stocks, smallest first.
var gaugeNumbers = []int{24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3}

// GaugeSizes are the AWG sizes from which one is picked, smallest first.
func GaugeSizes() []Size {
	sizes := make([]Size, 0, len(gaugeNumbers))
	for _, n := range gaugeNumbers {
		sizes = append(sizes, Size{calc.AWGName(n), calc.AWGArea(n)})
	}
	return sizes
}

// metricAreas are the metric sizes of IEC 60228 and ISO 6722-1 in mm2.
var metricAreas = []float64{0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120}

// MetricSizes are the metric sizes from which one is picked, smallest first.
func MetricSizes() []Size {
	sizes := make([]Size, 0, len(metricAreas))
	for _, a := range metricAreas {
		sizes = append(sizes, Size{calc.Format(a, 6) + " mm2", a})
	}
	return sizes
}

// smallest is the first size for which fits is true; ok is false where none is.
func smallest(sizes []Size, fits func(areaM2 float64) bool) (Size, bool) {
	for _, s := range sizes {
		if fits(s.Area * 1e-6) {
			return s, true
		}
	}
	return Size{Area: math.NaN()}, false
}
