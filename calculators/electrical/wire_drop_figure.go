package electrical

import "baybook/calculators/calc"

// drawWireDrop shows the loop with what is left at the load, and a bar of
// the supply with the lost part and the limit marked on it.
func drawWireDrop(in *calc.Values, out *calc.Result) *calc.Drawing {
	supply, drop := in.Num("supply"), out.Num("drop")
	d := calc.NewDrawing(320, 196, out.Fill("A run of {wire}, {length} one way, carrying {current}: {drop:3} of {supply} is "+
		"lost, {at_load:4} is left at the load."))
	d.Rect(calc.Point{X: 14, Y: 40}, 62, 60, calc.Outline, calc.Empty)
	d.Text(calc.Point{X: 45, Y: 66}, calc.Middle, "Supply")
	d.Text(calc.Point{X: 45, Y: 84}, calc.Middle, in.Get("supply").Text)
	d.Rect(calc.Point{X: 244, Y: 40}, 62, 60, calc.Outline, calc.Empty)
	d.Text(calc.Point{X: 275, Y: 66}, calc.Middle, "Load")
	d.Text(calc.Point{X: 275, Y: 84}, calc.Middle, out.Fill("{at_load:4}"))
	d.Line(calc.Point{X: 76, Y: 52}, calc.Point{X: 244, Y: 52}, calc.Heavy)
	d.Arrow(calc.Point{X: 150, Y: 52}, calc.Point{X: 172, Y: 52})
	d.Text(calc.Point{X: 160, Y: 44}, calc.Middle, out.Fill("{current} in {wire}"))
	d.Text(calc.Point{X: 160, Y: 24}, calc.Middle, out.Fill("{length} one way"))
	if in.Word("back") == "body" {
		d.Line(calc.Point{X: 76, Y: 88}, calc.Point{X: 244, Y: 88}, calc.Hidden)
		d.Text(calc.Point{X: 160, Y: 106}, calc.Middle, out.Fill("back: body, {body_resistance}"))
	} else {
		d.Line(calc.Point{X: 76, Y: 88}, calc.Point{X: 244, Y: 88}, calc.Heavy)
		d.Text(calc.Point{X: 160, Y: 106}, calc.Middle, "back: the same wire")
	}
	drawShare(d, drop/supply, in.SI("limit"), out.Fill("{drop:3} lost, {drop_percent:3}"))
	return d
}

// drawShare draws the supply as a bar from 0 to 20 %, the lost share inked
// and the limit marked.
func drawShare(d *calc.Drawing, share, limit float64, label string) {
	const left, width, most = 14.0, 292.0, 0.20
	at := func(s float64) float64 { return left + width*min(s, most)/most }
	d.Rect(calc.Point{X: left, Y: 146}, width, 14, calc.Outline, calc.Empty)
	d.Rect(calc.Point{X: left, Y: 146}, at(share)-left, 14, calc.Outline, calc.Shade)
	d.Line(calc.Point{X: at(limit), Y: 140}, calc.Point{X: at(limit), Y: 166}, calc.Heavy)
	d.Text(calc.Point{X: left, Y: 136}, calc.Start, label)
	anchor := calc.Middle
	if at(limit) > 260 {
		anchor = calc.End
	} else if at(limit) < 60 {
		anchor = calc.Start
	}
	d.Text(calc.Point{X: at(limit), Y: 180}, anchor, "limit "+calc.FormatUnit(100*limit, 3, "%"))
}
