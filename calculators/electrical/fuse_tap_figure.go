package electrical

import "baybook/calculators/calc"

// drawFuseTap shows the slot with its feed side, the tap's leg on it, and
// where each of the two fuses sits; below, how full the slot is.
func drawFuseTap(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 264, out.Fill("The feed side of the slot, live with the fuse out, supplies two fuses side by side: "+
		"the slot's {slot_fuse} fuse to the vehicle's load of {existing}, and the tap's {tap_fuse:4} fuse to the added load of "+
		"{added}. Together {total:3}."))
	d.Text(calc.Point{X: 8, Y: 16}, calc.Start, "Feed side of the slot:")
	d.Text(calc.Point{X: 8, Y: 31}, calc.Start, "live with the fuse out")
	d.Line(calc.Point{X: 8, Y: 84}, calc.Point{X: 54, Y: 84}, calc.Heavy)
	d.Arrow(calc.Point{X: 10, Y: 84}, calc.Point{X: 38, Y: 84})
	d.Circle(calc.Point{X: 54, Y: 84}, 5, calc.Outline, calc.Ink)
	d.Leader(calc.Point{X: 54, Y: 78}, calc.Point{X: 54, Y: 38}, calc.Start, "")
	d.Polyline([]calc.Point{{X: 54, Y: 84}, {X: 54, Y: 150}, {X: 104, Y: 150}}, calc.Heavy)
	d.Line(calc.Point{X: 54, Y: 84}, calc.Point{X: 104, Y: 84}, calc.Heavy)
	drawFuse(d, 84, in.Get("slot_fuse").Text, "Slot's fuse")
	drawFuse(d, 150, out.Fill("{tap_fuse}"), "Tap's fuse")
	d.Line(calc.Point{X: 164, Y: 84}, calc.Point{X: 198, Y: 84}, calc.Heavy)
	d.Circle(calc.Point{X: 178, Y: 84}, 5, calc.Outline, calc.Paper)
	d.Line(calc.Point{X: 178, Y: 89}, calc.Point{X: 178, Y: 107}, calc.Thin)
	d.Text(calc.Point{X: 190, Y: 118}, calc.Middle, "load side of the slot")
	d.Line(calc.Point{X: 164, Y: 150}, calc.Point{X: 198, Y: 150}, calc.Heavy)
	drawLoad(d, 84, "Vehicle", in.Get("existing").Text)
	drawLoad(d, 150, "Added", in.Get("added").Text)
	d.TextWithin(calc.Point{X: 181, Y: 186}, out.Fill("{wire} behind the tap, up to {wire_limit:3}"))
	drawSlotBar(d, in, out)
	return d
}

// drawFuse draws a fuse in its holder across a line at height y.
func drawFuse(d *calc.Drawing, y float64, rating, name string) {
	d.Rect(calc.Point{X: 104, Y: y - 13}, 60, 26, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 134, Y: y + 4}, calc.Middle, rating)
	d.Text(calc.Point{X: 134, Y: y - 18}, calc.Middle, name)
}

// drawLoad draws a consumer at the end of a line at height y.
func drawLoad(d *calc.Drawing, y float64, name, amps string) {
	d.Rect(calc.Point{X: 198, Y: y - 19}, 114, 38, calc.Outline, calc.Tint)
	d.Text(calc.Point{X: 255, Y: y - 3}, calc.Middle, name)
	d.Text(calc.Point{X: 255, Y: y + 12}, calc.Middle, amps)
}

// drawSlotBar draws the slot's fuse as a bar filled by the two loads, with
// the mark that a lasting load may reach.
func drawSlotBar(d *calc.Drawing, in *calc.Values, out *calc.Result) {
	const left, width, top = 14.0, 292.0, 219.0
	slot := in.Num("slot_fuse")
	at := func(amps float64) float64 { return left + width*min(amps/(1.25*slot), 1) }
	existing, total := in.Num("existing"), out.Num("total")
	d.Text(calc.Point{X: left, Y: top - 10}, calc.Start, out.Fill("Together {total} of {slot_fuse}"))
	d.Rect(calc.Point{X: left, Y: top}, width*0.8, 16, calc.Outline, calc.Empty)
	d.Rect(calc.Point{X: left, Y: top}, at(existing)-left, 16, calc.Outline, calc.Tint)
	d.Rect(calc.Point{X: at(existing), Y: top}, at(total)-at(existing), 16, calc.Outline, calc.Shade)
	share := FuseShare(in.SI("fuse_air"))
	mark := at(share * slot)
	d.Line(calc.Point{X: mark, Y: top - 5}, calc.Point{X: mark, Y: top + 22}, calc.Heavy)
	d.Text(calc.Point{X: mark, Y: top + 36}, calc.End, calc.FormatUnit(100*share, 3, "%"))
	d.Text(calc.Point{X: left + width*0.8, Y: top + 36}, calc.Start, "100 %")
}
