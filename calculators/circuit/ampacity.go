package circuit

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/electrical"
)

// columns are the insulation ratings that the table of currents has.
var columns = [...]float64{60, 75, 80, 90, 105, 125}

// Ampacity is the current in A that a wire may carry for good, as fuse-size has
// it: copper-clad aluminium counts as the copper that conducts as well, an
// insulation between two columns of the table as the lower one, and a wire
// outside the table in proportion to its area below and as the thickest one
// above.
func (n *Network) Ampacity(w *Wire) float64 {
	column := columns[0]
	for _, c := range columns {
		if c <= w.Insulation {
			column = c
		}
	}
	return wireLimit(w.CopperArea(), column, w.Ambient, w.Bundled)
}

// CopperArea is the area in m2 of copper that conducts as well as the wire.
func (w *Wire) CopperArea() float64 {
	return w.Area * electrical.MaterialNamed("copper").Resistivity / electrical.MaterialNamed(w.Conductor).Resistivity
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

// SizeFor is the smallest size that carries amps A where the wire runs, ""
// where none does.
func (n *Network) SizeFor(w *Wire, amps float64) string {
	sizes := electrical.GaugeSizes()
	if _, msg := calc.ParseWire(w.Size); msg == "" && strings.HasSuffix(w.Size, "mm2") {
		sizes = electrical.MetricSizes()
	}
	for _, s := range sizes {
		thicker := *w
		thicker.Area = s.Area * 1e-6
		if !calc.Under(n.Ampacity(&thicker), amps) {
			return s.Name
		}
	}
	return ""
}

// heatFactor is k of the adiabatic equation S²k² = I²t in A·√s/m2, from the
// insulation's rating up to what it withstands for a few seconds: 160 °C where
// it is of PVC, 250 °C where it is cross-linked (IEC 60364-4-43, IEC
// 60364-5-54 annex A: K = 226 and 234.5 °C for copper, 148 and 228 °C for
// aluminium).
func (w *Wire) heatFactor() float64 {
	k, beta := 226.0, 234.5
	if w.Conductor != "copper" {
		k, beta = 148, 228
	}
	end := 160.0
	if w.Insulation > 105 {
		end = math.Max(250, w.Insulation+25)
	}
	return 1e6 * k * math.Sqrt(math.Log((beta+end)/(beta+w.Insulation)))
}

// Withstands is the energy I²t in A²s that a wire withstands in a short time.
func (w *Wire) Withstands() float64 {
	ks := w.heatFactor() * w.Area
	return ks * ks
}
