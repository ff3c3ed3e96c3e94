package audio

import (
	"math"

	"baybook/calculators/calc"
)

// A section through the door, looking along it: glass to the left, trim to
// the right, the mounting face between them.
type doorSection struct {
	d     *calc.Drawing
	face  float64 // x of the mounting face in the drawing
	axis  float64 // y of the speaker's axis
	scale float64 // pixels a mm
}

// at maps mm from the mounting face (towards the cabin) and from the axis
// (upwards) to the drawing.
func (s doorSection) at(x, y float64) calc.Point {
	return calc.Point{X: s.face + x*s.scale, Y: s.axis - y*s.scale}
}

// drawSpeakerFit draws the section to scale with both margins.
func drawSpeakerFit(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 342, out.Fill("Section through the door: speaker {frame} on an adapter of {adapter}; room to the "+
		"glass {glass_margin}, room to the trim {trim_margin}."))
	spacer := in.Num("adapter") + in.Num("gasket")
	back := spacer - Behind(in.Num("depth"), in.Num("magnet"), in.SI("wedge"))
	front := spacer + InFront(in.Num("rise"), in.Num("frame"), in.SI("wedge"))
	left, right := math.Min(-in.Num("glass"), back), math.Max(in.Num("trim"), front)
	tall := math.Max(in.Num("frame"), in.Num("opening")) + 40
	s := doorSection{d: d, axis: 165}
	s.scale = math.Min(272/(right-left), 216/tall)
	s.face = 160 - s.scale*(left+right)/2
	half := tall / 2

	s.door(in.Num("opening")/2, half)
	s.adapter(in, spacer)
	s.speaker(in, spacer)
	s.pane(-in.Num("glass"), half)
	s.wall(in.Num("trim"), half)
	d.Line(s.at(left, 0), s.at(right, 0), calc.Center)

	top, base := s.at(0, half).Y, s.at(0, -half).Y
	s.margin(-in.Num("glass"), back, top-12, out.Fill("glass {glass_margin}"))
	s.margin(front, in.Num("trim"), base+44, out.Fill("trim {trim_margin}"))
	d.TextWithin(calc.Point{X: s.at(-in.Num("glass"), 0).X, Y: base + 13}, "glass")
	d.TextWithin(calc.Point{X: s.at(in.Num("trim"), 0).X, Y: top - 32}, "trim")
	return d
}

// door draws the sheet metal above and below the opening; it is drawn 2 mm
// thick at least, so that it can be seen.
func (s doorSection) door(opening, half float64) {
	thick := math.Max(2, 3/s.scale)
	for _, sign := range [...]float64{1, -1} {
		a, b := s.at(-thick, sign*opening), s.at(0, sign*half)
		s.d.Rect(calc.Point{X: a.X, Y: math.Min(a.Y, b.Y)}, b.X-a.X, math.Abs(b.Y-a.Y), calc.Outline, calc.Shade)
	}
}

// adapter draws the cut ring between metal and flange, hatched; a wedge
// tilts its outer face.
func (s doorSection) adapter(in *calc.Values, spacer float64) {
	if spacer == 0 {
		return
	}
	outer, inner := in.Num("frame")/2, math.Min(in.Num("cutout"), in.Num("frame"))/2
	for _, sign := range [...]float64{1, -1} {
		ring := []calc.Point{
			s.at(0, sign*inner), s.at(0, sign*outer),
			s.tilted(in, spacer, 0, sign*outer), s.tilted(in, spacer, 0, sign*inner),
		}
		s.d.Polygon(ring, calc.Outline, calc.Paper)
		s.d.Hatch(ring, 5)
	}
}

// tilted maps a place on the speaker, mm in front of its flange and above its
// axis, to the drawing: the wedge turns it about the flange's middle.
func (s doorSection) tilted(in *calc.Values, spacer, x, y float64) calc.Point {
	sin, cos := math.Sincos(in.SI("wedge"))
	return s.at(spacer+x*cos+y*sin, y*cos-x*sin)
}

// speaker draws flange, basket, magnet and the rise of the front.
func (s doorSection) speaker(in *calc.Values, spacer float64) {
	frame, magnet, depth := in.Num("frame")/2, in.Num("magnet")/2, in.Num("depth")
	cut := math.Min(in.Num("cutout")/2, frame)
	flange := math.Min(4, math.Max(1, in.Num("rise")))
	place := func(x, y float64) calc.Point { return s.tilted(in, spacer, x, y) }
	shape := func(f calc.Fill, points ...calc.Point) { s.d.Polygon(points, calc.Outline, f) }
	plate := -0.55 * depth // where the magnet starts
	shape(calc.Paper, place(0, cut), place(plate, math.Min(magnet, cut)), place(plate, -math.Min(magnet, cut)), place(0, -cut))
	shape(calc.Tint, place(plate, magnet), place(-depth, magnet), place(-depth, -magnet), place(plate, -magnet))
	shape(calc.Paper, place(0, frame), place(flange, frame), place(flange, -frame), place(0, -frame))
	rise := in.Num("rise")
	s.d.Polyline([]calc.Point{place(flange, 0.8*cut), place(rise, 0.7*cut), place(rise, -0.7*cut), place(flange, -0.8*cut)}, calc.Hidden)
}

// pane draws the lowered window.
func (s doorSection) pane(x, half float64) {
	a, b := s.at(x, half), s.at(x, -half)
	w := math.Max(3, 4*s.scale)
	s.d.Rect(calc.Point{X: a.X - w, Y: a.Y}, w, b.Y-a.Y, calc.Outline, calc.Paper)
	s.d.Line(calc.Point{X: a.X - w/2, Y: a.Y}, calc.Point{X: a.X - w/2, Y: b.Y}, calc.Thin)
}

// wall draws the back of the trim.
func (s doorSection) wall(x, half float64) {
	a, b := s.at(x, half), s.at(x, -half)
	s.d.Line(a, b, calc.Heavy)
}

// margin dimensions the room between two planes, mm from the mounting face.
func (s doorSection) margin(x1, x2, y float64, label string) {
	a, b := s.at(x1, 0).X, s.at(x2, 0).X
	s.d.Line(calc.Point{X: a, Y: y - 4}, calc.Point{X: a, Y: s.axis}, calc.Thin)
	s.d.Line(calc.Point{X: b, Y: y - 4}, calc.Point{X: b, Y: s.axis}, calc.Thin)
	s.d.Span(a, b, y, label)
}
