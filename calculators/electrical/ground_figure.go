package electrical

import "baybook/calculators/calc"

// drawGroundTest shows where the meter goes, and the drop at full load on a
// scale with the limit and its half.
func drawGroundTest(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 224, out.Fill("Meter from the battery's negative post to the device's ground terminal: {drop} at "+
		"{current}, which is {at_full_load} at {full_load}; the limit is {limit}."))
	d.Rect(calc.Point{X: 14, Y: 60}, 78, 44, calc.Outline, calc.Empty)
	d.Text(calc.Point{X: 53, Y: 80}, calc.Middle, "Battery −")
	d.Text(calc.Point{X: 53, Y: 96}, calc.Middle, "post")
	d.Rect(calc.Point{X: 228, Y: 60}, 78, 44, calc.Outline, calc.Empty)
	d.Text(calc.Point{X: 267, Y: 80}, calc.Middle, "Device")
	d.Text(calc.Point{X: 267, Y: 96}, calc.Middle, "ground")
	d.Line(calc.Point{X: 92, Y: 92}, calc.Point{X: 228, Y: 92}, calc.Heavy)
	d.Arrow(calc.Point{X: 180, Y: 92}, calc.Point{X: 152, Y: 92})
	d.Text(calc.Point{X: 160, Y: 110}, calc.Middle, in.Get("current").Text)
	d.Polyline([]calc.Point{{X: 53, Y: 60}, {X: 53, Y: 28}, {X: 142, Y: 28}}, calc.Thin)
	d.Polyline([]calc.Point{{X: 267, Y: 60}, {X: 267, Y: 28}, {X: 178, Y: 28}}, calc.Thin)
	d.Arrow(calc.Point{X: 53, Y: 40}, calc.Point{X: 53, Y: 60})
	d.Arrow(calc.Point{X: 267, Y: 40}, calc.Point{X: 267, Y: 60})
	d.Circle(calc.Point{X: 160, Y: 28}, 18, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 160, Y: 32}, calc.Middle, "mV")
	d.Text(calc.Point{X: 160, Y: 62}, calc.Middle, in.Get("drop").Text)
	drawDropBar(d, in, out)
	return d
}

// drawDropBar draws the drop at full load on a scale that ends at twice the
// limit.
func drawDropBar(d *calc.Drawing, in *calc.Values, out *calc.Result) {
	const left, width, top = 14.0, 292.0, 152.0
	limit := in.Num("limit")
	at := func(mv float64) float64 { return left + width*min(mv/(2*limit), 1) }
	d.Text(calc.Point{X: left, Y: top - 10}, calc.Start, out.Fill("{at_full_load} at {full_load}"))
	d.Rect(calc.Point{X: left, Y: top}, width, 16, calc.Outline, calc.Empty)
	d.Rect(calc.Point{X: left, Y: top}, at(out.Num("at_full_load"))-left, 16, calc.Outline, calc.Shade)
	d.Line(calc.Point{X: at(limit / 2), Y: top - 3}, calc.Point{X: at(limit / 2), Y: top + 22}, calc.Hidden)
	d.Line(calc.Point{X: at(limit), Y: top - 5}, calc.Point{X: at(limit), Y: top + 22}, calc.Heavy)
	d.Text(calc.Point{X: at(limit / 2), Y: top + 36}, calc.Middle, "check")
	d.Text(calc.Point{X: at(limit), Y: top + 36}, calc.Middle, out.Fill("limit {limit}"))
	d.Text(calc.Point{X: left, Y: top + 58}, calc.Start, out.Fill("Resistance {resistance:3}, heat {heat:3}"))
}
