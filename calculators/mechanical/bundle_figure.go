package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// tints tell the sizes of wire apart, the thickest first.
var tints = [...]calc.Fill{calc.Shade, calc.Tint, calc.Empty}

// drawBundle shows the packing in section, sizes told apart by their tint,
// and the estimate as a dashed circle where it is larger.
func drawBundle(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 318, out.Fill("Section of a bundle of {wires}: {diameter:4} across, {fill} of it filled; the estimate is {estimate:4}."))
	diameter, estimate := out.Num("diameter"), out.Num("estimate")
	scale := 244 / math.Max(diameter, estimate)
	center := calc.Point{X: 160, Y: 132}
	discs, _ := out.FigureData.([]Disc)
	sizes := make([]float64, len(discs))
	for i, w := range discs {
		sizes[i] = w.R
	}
	calc.SortNumbers(sizes)
	for _, w := range discs {
		thicker := 0 // sizes that are
		for i := 1; i < len(sizes); i++ {
			if sizes[i-1] >= w.R && sizes[i] > sizes[i-1] {
				thicker++
			}
		}
		tint := tints[thicker%len(tints)]
		d.Circle(calc.Point{X: center.X + scale*w.X, Y: center.Y - scale*w.Y}, scale*w.R, calc.Thin, tint)
	}
	d.Circle(center, scale*diameter/2, calc.Outline, calc.Empty)
	d.Circle(center, scale*estimate/2, calc.Hidden, calc.Empty)
	d.Span(center.X-scale*diameter/2, center.X+scale*diameter/2, 276, out.Fill("{diameter:4}"))
	d.Text(calc.Point{X: 160, Y: 308}, calc.Middle, out.Fill("dashed: estimate {estimate:4}"))
	return d
}
