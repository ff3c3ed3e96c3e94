package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// drawBundle draws the packing to scale, with the estimate as a dashed circle.
func drawBundle(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 312, out.Fill("Section through the bundle {wires}: {diameter} across, {fill} filled. The dashed circle is the estimate, {estimate}."))
	discs, around := Pack(radiiOf(in.Get("wires").Strands))
	scale := 124 / math.Max(around, out.Num("estimate")/2)
	centre := calc.Point{X: 160, Y: 138}
	for _, c := range discs {
		at := calc.Point{X: centre.X + scale*c.X, Y: centre.Y + scale*c.Y}
		d.Circle(at, scale*c.R, calc.Outline, calc.Tint)
		d.Circle(at, 0.6*scale*c.R, calc.Thin, calc.Shade)
	}
	d.Circle(centre, scale*around, calc.Outline, calc.Empty)
	d.Circle(centre, scale*out.Num("estimate")/2, calc.Hidden, calc.Empty)
	d.Dimension(calc.Point{X: centre.X - scale*around, Y: 272}, calc.Point{X: centre.X + scale*around, Y: 272}, 0, "")
	d.Text(calc.Point{X: 160, Y: 292}, calc.Middle, out.Fill("{diameter}"))
	d.TextSized(calc.Point{X: 160, Y: 308}, calc.Middle, 11, out.Fill("estimate {estimate} (dashed)"))
	return d
}
