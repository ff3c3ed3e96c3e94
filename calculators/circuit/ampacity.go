package circuit

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/electrical"
)

// columns are the insulation ratings that the table of currents has.
var columns = [...]float64{60, 75, 80, 90, 105, 125}

// Limit is the current in A that a wire may carry for good, as fuse-size has
// it: copper-clad aluminium counts as the copper that conducts as well, an
// insulation between two columns of the table as the lower one, and a wire
// outside the table in proportion to its area below and as the thickest one
// above.
func (n *Network) Limit(e *Element) float64 {
	column := columns[0]
	for _, c := range columns {
		if c <= e.Insulation {
			column = c
		}
	}
	return wireLimit(copperArea(e), column, n.Limits.Ambient, e.Bundled)
}

// copperArea is the area in m2 of copper that conducts as well as the wire.
func copperArea(e *Element) float64 {
	return e.Area * electrical.MaterialNamed("copper").Resistivity / electrical.MaterialNamed(e.Conductor).Resistivity
}

func wireLimit(area, column, ambient float64, bundled int) float64 {
	thinnest, thickest := calc.AWGArea(26)*1e-6, calc.AWGArea(-3)*1e-6
	used := math.Min(math.Max(area, thinnest), thickest)
	amps, _ := electrical.WireLimit(used, column, ambient, bundled)
	if area < thinnest {
		return amps * area / thinnest
	}
	return amps
}

// sizeFor is the smallest size that carries so many amperes where a wire
// runs, "" where none does.
func (n *Network) sizeFor(e *Element, amps float64) string {
	sizes := electrical.GaugeSizes()
	if _, msg := calc.ParseWire(e.Size); msg == "" && len(e.Size) > 3 && e.Size[len(e.Size)-3:] == "mm2" {
		sizes = electrical.MetricSizes()
	}
	for _, s := range sizes {
		thicker := *e
		thicker.Area = s.Area * 1e-6
		if !calc.Under(n.Limit(&thicker), amps) {
			return s.Name
		}
	}
	return ""
}

// heatFactor is k of the adiabatic equation S²k² = I²t in A·√s/m2, from the
// insulation's rating up to what it bears for a few seconds: 160 °C where it
// is of PVC, 250 °C where it is cross-linked (IEC 60364-4-43, IEC 60364-5-54
// annex A: K = 226 and 234.5 °C for copper, 148 and 228 °C for aluminium).
func heatFactor(e *Element) float64 {
	k, beta := 226.0, 234.5
	if e.Conductor != "copper" {
		k, beta = 148, 228
	}
	end := 160.0
	if e.Insulation > 105 {
		end = math.Max(250, e.Insulation+25)
	}
	return 1e6 * k * math.Sqrt(math.Log((beta+end)/(beta+e.Insulation)))
}

// withstands is the energy I²t in A²s that a wire bears in a short time.
func withstands(e *Element) float64 {
	ks := heatFactor(e) * e.Area
	return ks * ks
}
