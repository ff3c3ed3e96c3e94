package mechanical

import "baybook/calculators/calc"

// drawPassHole looks into the hole: the connector on its way through at the
// left, the grommet around the bundle at the right, both to one scale.
func drawPassHole(in *calc.Values, out *calc.Result) *calc.Drawing {
	hole := out.Num("hole")
	d := calc.NewDrawing(320, 206, out.Fill("A hole of {hole}: the connector of {connector_width} by {connector_height} needs {bare} to pass; "+
		"the grommet has a wall of {wall} around a bundle of {bundle}."))
	scale := 120 / hole
	r := scale * hole / 2
	left, right := calc.Point{X: 82, Y: 72}, calc.Point{X: 238, Y: 72}
	w, h := scale*in.Num("connector_width"), scale*in.Num("connector_height")
	d.Circle(left, r, calc.Outline, calc.Empty)
	d.Rect(calc.Point{X: left.X - w/2, Y: left.Y - h/2}, w, h, calc.Outline, calc.Tint)
	d.Line(calc.Point{X: left.X - w/2, Y: left.Y + h/2}, calc.Point{X: left.X + w/2, Y: left.Y - h/2}, calc.Center)
	d.Circle(right, r, calc.Outline, calc.Tint)
	inner := scale * in.Num("bundle") / 2
	if rim := inner + scale*in.Num("wall"); rim < r-1 {
		d.Circle(right, rim, calc.Hidden, calc.Empty)
	}
	d.Circle(right, inner, calc.Outline, calc.Paper)
	d.Circle(right, inner, calc.Thin, calc.Shade)
	d.Text(calc.Point{X: left.X, Y: 150}, calc.Middle, "connector passes")
	d.Text(calc.Point{X: left.X, Y: 166}, calc.Middle, out.Fill("{bare} corner to corner"))
	d.Text(calc.Point{X: right.X, Y: 150}, calc.Middle, out.Fill("grommet, bore {bundle}"))
	d.Text(calc.Point{X: right.X, Y: 166}, calc.Middle, out.Fill("wall {wall} or more"))
	d.Text(calc.Point{X: 160, Y: 192}, calc.Middle, out.Fill("Hole {hole} (both circles)"))
	return d
}
