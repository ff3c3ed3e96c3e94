package audio

import (
	"math"

	"baybook/calculators/calc"
)

// SealedBox answers what a closed box does to a driver.
var SealedBox = &calc.Calculator{
	Name:     "sealed-box",
	Title:    "Closed box for a driver",
	Question: "How deep will it play in this closed box?",
	Doc:      "The resonance, its Q and the half-power frequency of a driver in a closed box, the level at any frequency, and the volume for a wanted Q.",
	Decides:  "qtc",
	Inputs: []calc.Input{
		{Name: "fs", Label: "Driver's fs", Unit: "Hz", Min: 10, Max: 200, Default: "40",
			Help: "Free-air resonance, off the driver's data sheet."},
		{Name: "qts", Label: "Driver's Qts", Min: 0.1, Max: 1.5, Default: "0.45",
			Help: "Total Q, off the data sheet. Thin wire or a coil in front of it raises it."},
		{Name: "vas", Label: "Driver's Vas", Unit: "L", Min: 0.5, Max: 500, Default: "30",
			Help: "Equivalent air volume, off the data sheet."},
		{Name: "volume", Label: "Box, net", Unit: "L", Min: 0.5, Max: 500, Default: "20",
			Help: "Air inside, less driver and braces. A door is no closed box: it leaks."},
		{Name: "target", Label: "Wanted Qtc", Min: 0.4, Max: 1.5, Default: "0.707",
			Help: "0.707 reaches flattest and lowest; 0.5 is tightest; near 1 is small and boomy."},
		{Name: "probe", Label: "Level asked at", Unit: "Hz", Min: 5, Max: 1000, Default: "40",
			Help: "Any frequency whose level you want to know."},
	},
	Outputs: []calc.Output{
		{Name: "qtc", Label: "Qtc in the box"},
		{Name: "fc", Label: "Resonance in the box", Unit: "Hz"},
		{Name: "f3", Label: "Half-power frequency", Unit: "Hz"},
		{Name: "peak", Label: "Peak", Unit: "dB", Places: 2},
		{Name: "volume_for_target", Label: "Volume for wanted Qtc", Unit: "L"},
		{Name: "level", Label: "Level at that frequency", Unit: "dB", Places: 2},
	},
	Sources: []calc.Source{
		{Text: "Closed-box analysis: α = Vas/V, fc = fs·sqrt(1 + α), Qtc = Qts·sqrt(1 + α), Small, JAES 1972", Standing: "from memory"},
		{Text: "Half power (−3.0103 dB) and peak worked out from the second-order high-pass"},
	},
	Limits: []string{
		"Small signals in free space: a cabin lifts the deep bass, often by 6 dB to 12 dB, and large excursion bends the result.",
		"Loss and stuffing in the box are left out; stuffing makes it act up to a fifth larger.",
	},
	Cautions: []string{
		"A box thrown about in a crash kills: bolt it to the body, and keep it clear of belts, seats and airbags.",
		"Loud music harms hearing and hides sirens: see “How loud, and for how long”.",
	},
	Run:    sealedBox,
	Figure: drawSealedBox,
}

// maximallyFlat is the largest Q, 1/√2, at which the response has no peak.
const maximallyFlat = math.Sqrt2 / 2

// HalfPower is where a second-order high-pass of a Q crosses half power, as a
// multiple of its resonance: with A = 1/Q² − 2, sqrt((A + sqrt(A² + 4))/2).
func HalfPower(q float64) float64 {
	a := 1/(q*q) - 2
	return math.Sqrt((a + math.Hypot(a, 2)) / 2)
}

// PeakLevel is the highest level in dB of a second-order high-pass of a Q:
// 20·log10(Q²/sqrt(Q² − 1/4)), or 0 where it does not peak.
func PeakLevel(q float64) float64 {
	if q <= maximallyFlat {
		return 0
	}
	short := 1 - 1/(2*q*q) // Q⁴/(Q² − 1/4) is 1/(1 − short²)
	return asDecibels(-short * short)
}

// SealedLevel is the level in dB of a second-order high-pass at x = f/fc: with
// y = 1/x², its power response is 1/((y − 1)² + y/Q²).
func SealedLevel(q, x float64) float64 {
	y := 1 / (x * x)
	return asDecibels(y * (y - 2 + 1/(q*q)))
}

// asDecibels is the level of the power response 1/(1 + beyond), accurate also
// close to 0 dB.
func asDecibels(beyond float64) float64 { return -10 / math.Ln10 * math.Log1p(beyond) }

func sealedBox(in *calc.Values, out *calc.Result) *calc.Problem {
	fs, qts, target := in.SI("fs"), in.Num("qts"), in.Num("target")
	if !calc.Over(target, qts) {
		return calc.NewProblem("target", out.Fill("{target} is not above the driver's own Qts of {qts}; a box only raises it, so give a higher target"))
	}
	rise := math.Sqrt(1 + in.Num("vas")/in.Num("volume"))
	qtc, fc := qts*rise, fs*rise
	f3 := fc * HalfPower(qtc)
	level := SealedLevel(qtc, in.SI("probe")/fc)
	volume := in.Num("vas") / (math.Pow(target/qts, 2) - 1)
	out.Set("qtc", qtc)
	out.SetSI("fc", fc)
	out.SetSI("f3", f3)
	out.Set("peak", PeakLevel(qtc))
	out.Set("volume_for_target", volume)
	out.Set("level", level)
	out.Work("α: {vas} / {volume} = {1:4}; sqrt(1 + α) = {2:5}", in.Num("vas")/in.Num("volume"), rise)
	out.Work("Qtc: {qts} × {1:5} = {qtc:4}", rise)
	out.Work("fc: {fs} × {1:5} = {fc:4}", rise)
	out.Work("Half power: {fc:4} × {1:4} = {f3:4}", HalfPower(qtc))
	out.Work("For Qtc {target}: {vas} / (({target} / {qts})² − 1) = {volume_for_target:4}")
	out.Work("At {probe}, {1:4} of fc: {level}", in.SI("probe")/fc)
	return nil
}

// drawSealedBox draws the response with half power and the level asked for.
func drawSealedBox(in *calc.Values, out *calc.Result) *calc.Drawing {
	qtc, fc := out.Num("qtc"), out.Num("fc")
	d := calc.NewDrawing(320, 262, out.Fill("Level over frequency in a closed box of {volume}: Qtc {qtc}, half power at {f3}; at {probe}: {level}."))
	d.Text(calc.Point{X: 304, Y: 16}, calc.End, out.Fill("Closed box {volume}, Qtc {qtc}"))
	d.Text(calc.Point{X: 304, Y: 32}, calc.End, out.Fill("Dashed: half power {f3}"))
	d.Text(calc.Point{X: 304, Y: 48}, calc.End, out.Fill("Ring: {probe}: {level}"))
	response{
		level: func(f float64) float64 { return SealedLevel(qtc, f/fc) },
		probe: in.SI("probe"), line: out.Num("f3"), peak: out.Num("peak"),
	}.draw(d, 58, 164)
	return d
}
