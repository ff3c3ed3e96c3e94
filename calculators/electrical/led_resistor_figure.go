package electrical

import "baybook/calculators/calc"

// drawLEDResistor draws the string with the voltage across each part.
func drawLEDResistor(in *calc.Values, out *calc.Result) *calc.Drawing {
	leds := float64(in.Int("count")) * in.Num("forward")
	size := "no size"
	if out.Get("rating").Present {
		size = out.Fill("{rating}")
	}
	d := calc.NewDrawing(320, 168, out.Fill("From {supply} through {resistor}, "+size+", and {count} LEDs in series to ground, {actual:3} flowing."))
	d.Line(calc.Point{X: 12, Y: 70}, calc.Point{X: 296, Y: 70}, calc.Heavy)
	d.Circle(calc.Point{X: 12, Y: 70}, 4, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 6, Y: 52}, calc.Start, out.Fill("+{supply}"))
	d.Rect(calc.Point{X: 84, Y: 58}, 70, 24, calc.Outline, calc.Paper)
	d.Text(calc.Point{X: 119, Y: 48}, calc.Middle, out.Fill("{resistor}"))
	d.Text(calc.Point{X: 119, Y: 33}, calc.Middle, size)
	const led = 214.0
	d.Polygon([]calc.Point{{X: led - 12, Y: 56}, {X: led + 12, Y: 70}, {X: led - 12, Y: 84}}, calc.Outline, calc.Paper)
	d.Line(calc.Point{X: led + 12, Y: 56}, calc.Point{X: led + 12, Y: 84}, calc.Outline)
	for _, x := range [...]float64{led - 4, led + 6} {
		d.Line(calc.Point{X: x, Y: 52}, calc.Point{X: x + 9, Y: 40}, calc.Thin)
		d.Arrow(calc.Point{X: x, Y: 52}, calc.Point{X: x + 9, Y: 40})
	}
	d.Text(calc.Point{X: led + 26, Y: 46}, calc.Start, out.Fill("× {count}"))
	for i, half := range [...]float64{12, 8, 4} { // ground
		y := 70 + 5*float64(i)
		d.Line(calc.Point{X: 296 - half, Y: y}, calc.Point{X: 296 + half, Y: y}, calc.Outline)
	}
	d.Span(84, 154, 112, out.Fill("{1:3 V}", in.Num("supply")-leds))
	d.Span(led-26, led+26, 112, out.Fill("{1:3 V}", leds))
	d.TextWithin(calc.Point{X: 160, Y: 140}, out.Fill("{actual:3}, {power:3} of heat in the resistor"))
	return d
}
