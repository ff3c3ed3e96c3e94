package camera

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// drawGuideLines draws the picture with the marks and the lines that join
// them along the vehicle's sides.
func drawGuideLines(in *calc.Values, out *calc.Result) *calc.Drawing {
	c, _ := read(in)
	x := in.SI("vehicle_width") / 2
	list, texts := in.Get("distances").List, strings.Split(in.Get("distances").Text, ", ")
	title := "Picture of {pixels_wide} by {pixels_high} with floor marks {vehicle_width} apart"
	for i := range list {
		if n := strconv.Itoa(i + 1); out.Get("y_" + n).Present {
			title += "; at " + texts[i] + " from {left_x_" + n + "} to {right_x_" + n + "} across, {y_" + n + "} down"
		}
	}
	p := newPicture(c, in.Num("pixels_wide"), in.Num("pixels_high"), 2, false, out.Fill(title+"."))
	p.horizon()
	for _, side := range [...]float64{-x, x} {
		p.ground(side, 0, side, 4, calc.Outline)
		p.ground(side, 4, side, 25, calc.Outline)
	}
	p.frame()
	for _, y := range list {
		p.ground(-x, y, x, y, calc.Heavy)
	}
	for i, y := range list {
		if u, v, _ := c.Place(x, y, 0); c.Sees(x, y, 0) {
			for _, side := range [...]float64{-u, u} {
				p.d.Circle(p.at(side, v), 2.5, calc.Outline, calc.Paper)
			}
			p.labels.Put(p.at(u, v), texts[i])
		}
	}
	p.below(1, out.Fill("0, 0 is the top left corner; {pixels_wide} × {pixels_high}"))
	p.below(2, "thick: the marks; dashed: the horizon")
	return p.d
}
