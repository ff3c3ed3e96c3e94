package electrical

import (
	"math"

	"baybook/calculators/calc"
)

// insulations are the insulation temperature ratings in °C that the ampacity
// table has a column for.
var insulations = []float64{60, 75, 80, 90, 105, 125}

// tableAmbient is the ambient temperature in °C that the ampacity table is for.
const tableAmbient = 30.0

// ampacities is 33 CFR 183.425 Table 5: amperes of one copper conductor at
// 30 °C ambient, a column for each of insulations. Thinnest first; gauge 0 is
// 1/0 and -3 is 4/0.
var ampacities = []struct {
	gauge int
	amps  [6]float64
}{
	{18, [6]float64{10, 10, 15, 20, 20, 25}},
	{16, [6]float64{15, 15, 20, 25, 25, 30}},
	{14, [6]float64{20, 20, 25, 30, 35, 40}},
	{12, [6]float64{25, 25, 35, 40, 45, 50}},
	{10, [6]float64{40, 40, 50, 55, 60, 70}},
	{8, [6]float64{55, 65, 70, 70, 80, 90}},
	{6, [6]float64{80, 95, 100, 100, 120, 125}},
	{4, [6]float64{105, 125, 130, 135, 160, 170}},
	{3, [6]float64{120, 145, 150, 155, 180, 195}},
	{2, [6]float64{140, 170, 175, 180, 210, 225}},
	{1, [6]float64{165, 195, 210, 210, 245, 265}},
	{0, [6]float64{195, 230, 245, 245, 285, 305}},
	{-1, [6]float64{225, 265, 285, 285, 330, 355}},
	{-2, [6]float64{260, 310, 330, 330, 385, 410}},
	{-3, [6]float64{300, 360, 385, 385, 445, 475}},
}

// thinnestRated is the AWG number below whose area no ampacity is given: the
// table starts at 18 AWG, and its value is carried down in proportion to area
// this far and no further.
const thinnestRated = 26

// TableAmpacity is what one copper conductor carries at 30 °C ambient, in A;
// area in m², insulation one of the table's ratings in °C. Between the sizes
// of 33 CFR 183.425 Table 5 it interpolates ln(A) on ln(area); from 18 AWG
// down to 26 AWG it is the 18 AWG value in proportion to area, which is
// cautious common practice. ok is false outside 26 AWG to 4/0 AWG and for an
// insulation without a column.
func TableAmpacity(area, insulation float64) (amps float64, ok bool) {
	column := insulationColumn(insulation)
	last := len(ampacities) - 1
	if column < 0 || calc.Under(area, gaugeArea(thinnestRated)) || calc.Over(area, gaugeArea(ampacities[last].gauge)) {
		return 0, false
	}
	if first := gaugeArea(ampacities[0].gauge); area < first {
		return ampacities[0].amps[column] * area / first, true
	}
	i := 0
	for i < last-1 && area >= gaugeArea(ampacities[i+1].gauge) {
		i++
	}
	thin, thick := gaugeArea(ampacities[i].gauge), gaugeArea(ampacities[i+1].gauge)
	low, top := ampacities[i].amps[column], ampacities[i+1].amps[column]
	t := math.Log(area/thin) / math.Log(thick/thin)
	return low * math.Pow(top/low, t), true
}

// insulationColumn is the table column of an insulation rating, -1 for none.
func insulationColumn(insulation float64) int {
	for i, c := range insulations {
		if c == insulation {
			return i
		}
	}
	return -1
}

// gaugeArea is the area of an AWG number in m².
func gaugeArea(n int) float64 { return calc.AWGArea(n) * 1e-6 }

// AmbientFactor corrects a 30 °C ampacity for another ambient, both in °C:
// sqrt((Tc − Ta)/(Tc − 30)), the form of NEC 310.15. It is 0 where the
// ambient reaches the insulation's rating.
func AmbientFactor(insulation, ambient float64) float64 {
	return math.Sqrt(math.Max(0, (insulation-ambient)/(insulation-tableAmbient)))
}

// bundlings are the factors of NEC 310.15(B)(3)(a) by the most
// current-carrying wires that each is for.
var bundlings = []struct {
	most   int
	factor float64
}{{3, 1}, {6, 0.8}, {9, 0.7}, {20, 0.5}, {30, 0.45}}

// BundlingFactor is what an ampacity is multiplied by for 1 to 30
// current-carrying wires run together.
func BundlingFactor(wires int) float64 {
	for _, b := range bundlings {
		if wires <= b.most {
			return b.factor
		}
	}
	return bundlings[len(bundlings)-1].factor
}

// WireLimit is the current in A that a copper wire may carry for good: area
// in m², temperatures in °C. ok is false where TableAmpacity has no value.
func WireLimit(area, insulation, ambient float64, bundled int) (amps float64, ok bool) {
	amps, ok = TableAmpacity(area, insulation)
	return amps * AmbientFactor(insulation, ambient) * BundlingFactor(bundled), ok
}

// Smallest and largest areas in mm2 that an ampacity is given for, as bounds
// of an input.
var (
	leastRatedArea = calc.AWGArea(thinnestRated)
	mostRatedArea  = calc.AWGArea(ampacities[len(ampacities)-1].gauge)
)
