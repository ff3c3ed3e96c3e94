package mechanical

import "baybook/calculators/calc"

// drawShrinkTube looks along the wire: the tube around the thickest part as
// supplied, and around the thinnest once shrunk, to one scale.
func drawShrinkTube(in *calc.Values, out *calc.Result) *calc.Drawing {
	size, recovered := out.Num("size"), out.Num("recovered")
	d := calc.NewDrawing(320, 184, out.Fill("A tube of {size:4} slides over {over} and would shrink to {recovered} inside; it must grip {grip}."))
	scale := 112 / size
	left, right := calc.Point{X: 82, Y: 66}, calc.Point{X: 238, Y: 66}
	d.Circle(left, scale*in.Num("over")/2, calc.Thin, calc.Shade)
	d.Circle(left, scale*size/2, calc.Heavy, calc.Empty)
	d.Circle(right, scale*in.Num("grip")/2, calc.Thin, calc.Shade)
	around := recovered
	if around < in.Num("grip") { // the part stops it
		around = in.Num("grip")
		d.Circle(right, scale*recovered/2, calc.Hidden, calc.Empty)
	}
	d.Circle(right, scale*around/2, calc.Heavy, calc.Empty)
	d.Text(calc.Point{X: left.X, Y: 142}, calc.Middle, out.Fill("tube {size:4}"))
	d.Text(calc.Point{X: left.X, Y: 158}, calc.Middle, out.Fill("over {over}"))
	d.Text(calc.Point{X: right.X, Y: 142}, calc.Middle, out.Fill("shrinks to {recovered}"))
	d.Text(calc.Point{X: right.X, Y: 158}, calc.Middle, out.Fill("grips {grip}"))
	d.Text(calc.Point{X: 160, Y: 178}, calc.Middle, "heavy: the tube, as supplied and shrunk")
	return d
}
