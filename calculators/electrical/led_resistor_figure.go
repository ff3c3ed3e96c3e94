package electrical

import "baybook/calculators/calc"

// drawLEDResistor draws the string with the voltage over each part.
func drawLEDResistor(in *calc.Values, out *calc.Result) *calc.Drawing {
	resistor := calc.ShowUnit(out.Num("resistor"), 3, "ohm")
	leds := float64(in.Int("count")) * in.Num("forward")
	size := "no size"
	if a := out.Get("rating"); a.Present {
		size = calc.ShowUnit(a.Num, 3, "W")
	}
	d := calc.NewDrawing(320, 168, "From "+in.Get("supply").Text+" through "+resistor+", "+size+", and "+in.Get("count").Text+
		" LEDs in series to ground, "+calc.ShowUnit(out.Num("actual"), 3, "mA")+" flowing.")
	d.Line(calc.Point{X: 12, Y: 70}, calc.Point{X: 296, Y: 70}, calc.Heavy)
	d.Circle(calc.Point{X: 12, Y: 70}, 4, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 6, Y: 52}, calc.Start, "+"+in.Get("supply").Text)
	d.Rect(calc.Point{X: 84, Y: 58}, 70, 24, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 119, Y: 48}, calc.Middle, resistor)
	d.Text(calc.Point{X: 119, Y: 33}, calc.Middle, size)
	const led = 214.0
	d.Polygon([]calc.Point{{X: led - 12, Y: 56}, {X: led + 12, Y: 70}, {X: led - 12, Y: 84}}, calc.Outline, calc.Paper)
	d.Line(calc.Point{X: led + 12, Y: 56}, calc.Point{X: led + 12, Y: 84}, calc.Outline)
	for _, x := range [...]float64{led - 4, led + 6} {
		d.Line(calc.Point{X: x, Y: 52}, calc.Point{X: x + 9, Y: 40}, calc.Thin)
		d.Arrow(calc.Point{X: x, Y: 52}, calc.Point{X: x + 9, Y: 40})
	}
	d.Text(calc.Point{X: led + 26, Y: 46}, calc.Start, "× "+in.Get("count").Text)
	for i, half := range [...]float64{12, 8, 4} { // ground
		y := 70 + 5*float64(i)
		d.Line(calc.Point{X: 296 - half, Y: y}, calc.Point{X: 296 + half, Y: y}, calc.Outline)
	}
	d.Span(84, 154, 112, calc.ShowUnit(in.Num("supply")-leds, 3, "V"))
	d.Span(led-26, led+26, 112, calc.ShowUnit(leds, 3, "V"))
	d.TextWithin(calc.Point{X: 160, Y: 140}, calc.ShowUnit(out.Num("actual"), 3, "mA")+", "+
		calc.ShowUnit(out.Num("power"), 3, "W")+" of heat in the resistor")
	return d
}
