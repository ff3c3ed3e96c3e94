package electrical

import "baybook/calculators/calc"

// drawFeedPlan draws the feed from the battery through its fuse to the load,
// each with what was picked for it, and the drop as a share of the supply.
func drawFeedPlan(in *calc.Values, out *calc.Result) *calc.Drawing {
	has := func(name string) bool { return out.Get(name).Present }
	fuse, wire, said := "no fuse", "no wire", "There is no fuse or no wire for it."
	if has("fuse") {
		fuse = "{fuse:4}"
	}
	if has("awg") {
		wire, said = "{awg}", "Its drop is {drop:3}, {drop_percent:3}."
	}
	if has("metric") {
		wire += " or {metric}"
	}
	d := calc.NewDrawing(320, 196, out.Fill("A feed of {current} over {length}: fuse "+fuse+", wire "+wire+". "+said))
	d.Rect(calc.Point{X: 10, Y: 40}, 58, 56, calc.Outline, calc.Empty)
	d.Text(calc.Point{X: 39, Y: 64}, calc.Middle, "Battery")
	d.Text(calc.Point{X: 39, Y: 82}, calc.Middle, in.Get("supply").Text)
	d.Line(calc.Point{X: 68, Y: 52}, calc.Point{X: 86, Y: 52}, calc.Heavy)
	d.Rect(calc.Point{X: 86, Y: 40}, 58, 24, calc.Outline, calc.Paper)
	d.Line(calc.Point{X: 86, Y: 52}, calc.Point{X: 144, Y: 52}, calc.Thin)
	d.Label(calc.Point{X: 115, Y: 56}, calc.Middle, out.Fill(fuse))
	d.Line(calc.Point{X: 144, Y: 52}, calc.Point{X: 252, Y: 52}, calc.Heavy)
	d.Arrow(calc.Point{X: 180, Y: 52}, calc.Point{X: 205, Y: 52})
	d.Text(calc.Point{X: 160, Y: 30}, calc.Middle, out.Fill(wire+", {length}"))
	d.Rect(calc.Point{X: 252, Y: 40}, 58, 56, calc.Outline, calc.Tint)
	d.Text(calc.Point{X: 281, Y: 64}, calc.Middle, "Load")
	d.Text(calc.Point{X: 281, Y: 82}, calc.Middle, in.Get("current").Text)
	if in.Word("back") == "body" {
		d.Line(calc.Point{X: 68, Y: 86}, calc.Point{X: 252, Y: 86}, calc.Hidden)
		d.Text(calc.Point{X: 160, Y: 106}, calc.Middle, out.Fill("return: body, {body_resistance}"))
	} else {
		d.Line(calc.Point{X: 68, Y: 86}, calc.Point{X: 252, Y: 86}, calc.Heavy)
		d.Text(calc.Point{X: 160, Y: 106}, calc.Middle, "return: the same wire")
	}
	if has("drop") {
		drawShare(d, out.Num("drop_percent")/100, in.SI("limit"), out.Fill("{drop:3} lost in {awg}, {drop_percent:3}"))
	} else {
		drawShare(d, 0, in.SI("limit"), "no AWG size does it")
	}
	return d
}
