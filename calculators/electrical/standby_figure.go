package electrical

import "baybook/calculators/calc"

// drawStandby draws the charge over the days parked, with the floor and the
// day of return.
func drawStandby(in *calc.Values, out *calc.Result) *calc.Drawing {
	charge, floor, parked := in.Num("charge"), in.Num("floor"), in.Num("parked")
	lasts := out.Get("lasts")
	said := "nothing draws on the battery"
	if lasts.Present {
		said = "it reaches the floor after {lasts}"
	}
	d := calc.NewDrawing(320, 246, out.Fill("Charge of {battery} over the days parked, from {charge} to the floor of {floor}: "+
		""+said+"; it stands {parked}."))
	days := max(1, 2*parked) // the axis: past the return, and up to the floor where that is near
	if lasts.Present && lasts.Num < 4*days {
		days = max(1, parked*1.2, lasts.Num*1.2)
	}
	p := calc.NewPlot(d, calc.Point{X: 40, Y: 40}, 264, 166, 0, days, 0, 100, false, "Days parked", "Charge, %")
	slope := 0.0 // % a day
	if lasts.Present {
		slope = (charge - floor) / lasts.Num
	}
	p.Across(floor, calc.Hidden)
	p.Curve(func(t float64) float64 { return charge - slope*t }, calc.Heavy)
	p.Mark(parked, max(charge-slope*parked, 0), "")
	d.Text(calc.Point{X: 304, Y: 18}, calc.End, out.Fill("Ring: back after {parked}"))
	d.Text(calc.Point{X: 304, Y: 33}, calc.End, out.Fill("Dashed: floor {floor}"))
	return d
}
