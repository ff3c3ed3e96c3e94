package draw

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
)

// A symbol is how a part looks, after IEC 60617, drawn upright about a line
// that comes in at the top and goes on at the bottom.
type symbol struct {
	name string
	// left and right are how far it reaches from its line, high how much room
	// it needs from top to bottom, lead lines included; body is half the
	// height of the symbol itself.
	left, right, high, body float64
	draw                    func(s *sketch, at calc.Point, it *item)
	// ends is true where no line goes on at the bottom, starts where none
	// comes in at the top.
	ends, starts bool
}

// symbols are all of them, by name.
var symbols = []symbol{
	{name: "wire", left: 4, right: 4, high: 30, body: 0, draw: drawNothing},
	{name: "fuse", left: 7, right: 7, high: 38, body: 11, draw: drawFuse},
	{name: "switch", left: 12, right: 4, high: 38, body: 10, draw: drawSwitch},
	{name: "coil", left: 12, right: 12, high: 44, body: 8, draw: drawCoil},
	{name: "coil with", left: 31, right: 12, high: 44, body: 8, draw: drawCoil},
	{name: "way", left: 6, right: 6, high: 28, body: 5, draw: drawWay},
	{name: "lamp", left: 12, right: 12, high: 42, body: 11, draw: drawLamp},
	{name: "motor", left: 12, right: 12, high: 42, body: 11, draw: drawMotor},
	{name: "heater", left: 8, right: 8, high: 44, body: 13, draw: drawHeater},
	{name: "resistor", left: 6, right: 6, high: 44, body: 13, draw: drawResistor},
	{name: "device", left: 15, right: 15, high: 44, body: 13, draw: drawDevice},
	{name: "leds", left: 10, right: 16, high: 42, body: 8, draw: drawLEDs},
	{name: "amplifier", left: 15, right: 15, high: 44, body: 13, draw: drawAmplifier},
	{name: "alternator", left: 16, right: 16, high: 44, body: 5, draw: drawSource},
	{name: "converter", left: 15, right: 15, high: 44, body: 13, draw: drawDevice},
	{name: "diode", left: 10, right: 16, high: 42, body: 8, draw: drawLEDs},
	{name: "rem", left: 9, right: 9, high: 28, body: 8, draw: drawRem, ends: true},
	{name: "output", left: 12, right: 12, high: 42, body: 11, draw: drawOutput, starts: true},
	{name: "speaker", left: 6, right: 15, high: 42, body: 9, draw: drawSpeaker},
	{name: "source", left: 16, right: 16, high: 44, body: 5, draw: drawSource},
	{name: "ground", left: 12, right: 12, high: 34, body: 8, draw: drawGround, ends: true},
	{name: "joint", left: 4, right: 4, high: 22, body: 0, draw: drawJoint},
	{name: "rail", left: 5, right: 5, high: 22, body: 3, draw: drawRail, starts: true},
	{name: "flag", left: 6, right: 6, high: 26, body: 7, draw: drawFlag, ends: true},
	{name: "minus", left: 10, right: 10, high: 26, body: 6, draw: drawMinus, ends: true},
	{name: "feeds", left: 6, right: 6, high: 30, body: 7, draw: drawFlag, ends: true},
	{name: "link", left: 4, right: 20, high: 24, body: 0, draw: drawLink},
}

// symbolNamed finds a symbol; the list holds every name that is asked for.
func symbolNamed(name string) *symbol {
	for i := range symbols {
		if symbols[i].name == name {
			return &symbols[i]
		}
	}
	return &symbols[0]
}

// itemSymbols are the symbols of items that are no branches.
var itemSymbols = [...]string{jointItem: "joint", railItem: "rail", flagItem: "flag", minusItem: "minus", linkItem: "link"}

// roleSymbols are the symbols of branches that are not the only way through
// their part.
var roleSymbols = [...]string{circuit.Coil: "coil", circuit.MakeContact: "switch", circuit.BreakContact: "switch", circuit.RemoteInput: "rem",
	circuit.Feeding: "feeds", circuit.SupplyInput: "amplifier", circuit.Way: "way", circuit.Output: "output", circuit.Position: "switch", circuit.Converted: "output"}

// symbolOf is the symbol of an item.
func (p *layouter) symbolOf(it *item) *symbol {
	if it.kind != branchItem {
		return symbolNamed(itemSymbols[it.kind])
	}
	b := &p.Network.Branches[it.branch]
	switch e := p.Network.Of(b).(type) {
	case *circuit.Relay:
		if b.Role == circuit.Coil && e.Suppression != "none" {
			return symbolNamed("coil with")
		}
	case *circuit.Converter:
		if b.Role == circuit.SupplyInput {
			return symbolNamed("converter")
		}
	case *circuit.Load:
		return symbolNamed(e.Type)
	}
	if b.Role != circuit.Through {
		return symbolNamed(roleSymbols[b.Role])
	}
	return symbolNamed(p.Network.Of(b).Basics().Word())
}

// A way that is a wire is drawn by its color, and has no symbol.
func drawNothing(*sketch, calc.Point, *item) {}

func drawFuse(s *sketch, at calc.Point, it *item) {
	fuse := s.p.part(it.branch).(*circuit.Fuse)
	corner := calc.Point{X: at.X - 6, Y: at.Y - 11}
	if ink := inkOf(fuseInks[:], fuse.Color()); ink != "" {
		s.d.Body(corner, 12, 22, calc.Outline, ink)
	} else {
		s.d.Rect(corner, 12, 22, calc.Outline, calc.Paper)
	}
	s.d.Line(calc.Point{X: at.X, Y: at.Y - 11}, calc.Point{X: at.X, Y: at.Y + 11}, calc.Outline)
}

// drawSwitch draws a contact as it stands in the state: closed straight,
// open slanting; a break contact has its stop bar.
func drawSwitch(s *sketch, at calc.Point, it *item) {
	top, foot := calc.Point{X: at.X, Y: at.Y - 10}, calc.Point{X: at.X, Y: at.Y + 10}
	if s.p.Solutions[s.state].Flows[it.branch].Open {
		s.d.Line(foot, calc.Point{X: at.X - 9, Y: at.Y - 8}, calc.Outline)
	} else {
		s.d.Line(foot, calc.Point{X: at.X - 2.5, Y: at.Y - 11}, calc.Outline)
	}
	if s.p.Network.Branches[it.branch].Role == circuit.BreakContact {
		s.d.Line(top, calc.Point{X: at.X - 6, Y: at.Y - 10}, calc.Outline)
	}
	for _, p := range [...]calc.Point{top, foot} {
		s.d.Circle(p, 2, calc.Thin, calc.Ink)
	}
}

func drawCoil(s *sketch, at calc.Point, it *item) {
	s.d.Rect(calc.Point{X: at.X - 12, Y: at.Y - 8}, 24, 16, calc.Outline, calc.Paper)
	e := s.p.part(it.branch).(*circuit.Relay)
	if e.Suppression == "none" {
		return
	}
	x := at.X - 23
	s.d.Polyline([]calc.Point{{X: at.X, Y: at.Y - 16}, {X: x, Y: at.Y - 16}, {X: x, Y: at.Y + 16}, {X: at.X, Y: at.Y + 16}}, calc.Outline)
	if e.Suppression == "resistor" {
		s.d.Rect(calc.Point{X: x - 4, Y: at.Y - 9}, 8, 18, calc.Outline, calc.Paper)
		return
	}
	up := -1.0 // the diode points at 86
	if it.flip {
		up = 1
	}
	s.d.Polygon([]calc.Point{{X: x, Y: at.Y + 6*up}, {X: x - 6, Y: at.Y - 6*up}, {X: x + 6, Y: at.Y - 6*up}}, calc.Outline, calc.Paper)
	s.d.Line(calc.Point{X: x - 6, Y: at.Y + 6*up}, calc.Point{X: x + 6, Y: at.Y + 6*up}, calc.Outline)
	if e.Suppression == "zener" {
		s.d.Line(calc.Point{X: x + 6, Y: at.Y + 6*up}, calc.Point{X: x + 6, Y: at.Y + 2*up}, calc.Outline)
	}
}

func drawWay(s *sketch, at calc.Point, _ *item) {
	s.d.Arc(calc.Point{X: at.X, Y: at.Y}, 5, math.Pi, 2*math.Pi, calc.Outline)
	s.d.Line(calc.Point{X: at.X, Y: at.Y - 1}, calc.Point{X: at.X, Y: at.Y + 5}, calc.Heavy)
}

func drawLamp(s *sketch, at calc.Point, _ *item) {
	s.d.Circle(at, 11, calc.Outline, calc.Paper)
	r := 11 * math.Sqrt2 / 2
	s.d.Line(calc.Point{X: at.X - r, Y: at.Y - r}, calc.Point{X: at.X + r, Y: at.Y + r}, calc.Outline)
	s.d.Line(calc.Point{X: at.X - r, Y: at.Y + r}, calc.Point{X: at.X + r, Y: at.Y - r}, calc.Outline)
}

func drawMotor(s *sketch, at calc.Point, _ *item) {
	s.d.Circle(at, 11, calc.Outline, calc.Paper)
	s.d.TextSized(calc.Point{X: at.X, Y: at.Y + 4.5}, calc.Middle, 13, "M")
}

func drawHeater(s *sketch, at calc.Point, _ *item) {
	s.d.Rect(calc.Point{X: at.X - 7, Y: at.Y - 13}, 14, 26, calc.Outline, calc.Paper)
	for _, y := range [...]float64{-6.5, 0, 6.5} {
		s.d.Line(calc.Point{X: at.X - 7, Y: at.Y + y}, calc.Point{X: at.X + 7, Y: at.Y + y}, calc.Outline)
	}
}

func drawResistor(s *sketch, at calc.Point, _ *item) {
	s.d.Rect(calc.Point{X: at.X - 5, Y: at.Y - 13}, 10, 26, calc.Outline, calc.Paper)
}

func drawDevice(s *sketch, at calc.Point, it *item) {
	s.d.Rect(calc.Point{X: at.X - 14, Y: at.Y - 13}, 28, 26, calc.Outline, calc.Paper)
	s.sign(at, it.flip)
}

// sign letters + and - at the terminals of a device.
func (s *sketch) sign(at calc.Point, flip bool) {
	top, foot := "+", "−"
	if flip {
		top, foot = foot, top
	}
	s.d.TextSized(calc.Point{X: at.X, Y: at.Y - 3}, calc.Middle, letterSize, top)
	s.d.TextSized(calc.Point{X: at.X, Y: at.Y + 11}, calc.Middle, letterSize, foot)
}

func drawLEDs(s *sketch, at calc.Point, it *item) {
	down := 1.0
	if it.flip {
		down = -1
	}
	s.d.Polygon([]calc.Point{{X: at.X, Y: at.Y + 8*down}, {X: at.X - 9, Y: at.Y - 8*down}, {X: at.X + 9, Y: at.Y - 8*down}}, calc.Outline, calc.Paper)
	s.d.Line(calc.Point{X: at.X - 9, Y: at.Y + 8*down}, calc.Point{X: at.X + 9, Y: at.Y + 8*down}, calc.Outline)
	for _, y := range [...]float64{-1, 5} {
		from, to := calc.Point{X: at.X + 8, Y: at.Y + y}, calc.Point{X: at.X + 15, Y: at.Y + y - 6}
		s.d.Line(from, to, calc.Thin)
		s.d.Polygon([]calc.Point{to, {X: to.X - 3.5, Y: to.Y + 0.5}, {X: to.X - 0.5, Y: to.Y + 3.5}}, calc.Thin, calc.Ink)
	}
}

func drawAmplifier(s *sketch, at calc.Point, _ *item) {
	s.d.Rect(calc.Point{X: at.X - 14, Y: at.Y - 13}, 28, 26, calc.Outline, calc.Paper)
	s.d.Polygon([]calc.Point{{X: at.X - 9, Y: at.Y - 8}, {X: at.X - 9, Y: at.Y + 8}, {X: at.X + 9, Y: at.Y}}, calc.Thin, calc.Empty)
}

func drawRem(s *sketch, at calc.Point, _ *item) {
	s.d.Rect(calc.Point{X: at.X - 8, Y: at.Y - 8}, 16, 16, calc.Outline, calc.Paper)
	s.d.Polygon([]calc.Point{{X: at.X - 4, Y: at.Y - 4}, {X: at.X - 4, Y: at.Y + 4}, {X: at.X + 5, Y: at.Y}}, calc.Thin, calc.Empty)
}

func drawOutput(s *sketch, at calc.Point, _ *item) {
	s.d.Circle(at, 11, calc.Outline, calc.Paper)
	var wave []calc.Point
	for x := -7.0; x <= 7; x++ {
		wave = append(wave, calc.Point{X: at.X + x, Y: at.Y - 4*math.Sin(x*math.Pi/7)})
	}
	s.d.Polyline(wave, calc.Outline)
}

func drawSpeaker(s *sketch, at calc.Point, _ *item) {
	s.d.Rect(calc.Point{X: at.X - 5, Y: at.Y - 9}, 9, 18, calc.Outline, calc.Paper)
	s.d.Polygon([]calc.Point{{X: at.X + 4, Y: at.Y - 6}, {X: at.X + 14, Y: at.Y - 13}, {X: at.X + 14, Y: at.Y + 13}, {X: at.X + 4, Y: at.Y + 6}}, calc.Outline, calc.Paper)
}

// drawSource draws a cell: the long plate is positive.
func drawSource(s *sketch, at calc.Point, it *item) {
	long, short := at.Y-3.5, at.Y+3.5
	if !it.flip {
		long, short = short, long
	}
	s.d.Line(calc.Point{X: at.X - 14, Y: long}, calc.Point{X: at.X + 14, Y: long}, calc.Outline)
	s.d.Line(calc.Point{X: at.X - 7, Y: short}, calc.Point{X: at.X + 7, Y: short}, calc.Heavy)
	for _, stub := range [...][2]float64{{-5, -3.5}, {3.5, 5}} {
		s.d.Line(calc.Point{X: at.X, Y: at.Y + stub[0]}, calc.Point{X: at.X, Y: at.Y + stub[1]}, calc.Outline)
	}
	s.d.TextSized(calc.Point{X: at.X - 10, Y: long - 2}, calc.Middle, letterSize, "+")
}

// drawGround draws the frame of the vehicle.
func drawGround(s *sketch, at calc.Point, _ *item) {
	y := at.Y + 1
	s.d.Line(calc.Point{X: at.X, Y: at.Y - 8}, calc.Point{X: at.X, Y: y}, calc.Outline)
	s.d.Line(calc.Point{X: at.X - 10, Y: y}, calc.Point{X: at.X + 10, Y: y}, calc.Outline)
	for _, x := range [...]float64{-10, 0, 10} {
		s.d.Line(calc.Point{X: at.X + x, Y: y}, calc.Point{X: at.X + x - 4, Y: y + 7}, calc.Outline)
	}
}

// drawJoint leaves a splice to its line: the dot stands where lines meet.
func drawJoint(*sketch, calc.Point, *item) {}

func drawRail(s *sketch, at calc.Point, _ *item) { s.d.Circle(at, 3, calc.Outline, calc.Paper) }

func drawFlag(s *sketch, at calc.Point, _ *item) {
	s.d.Line(calc.Point{X: at.X, Y: at.Y - 7}, calc.Point{X: at.X, Y: at.Y + 1}, calc.Outline)
	s.d.Polygon([]calc.Point{{X: at.X, Y: at.Y + 7}, {X: at.X - 5, Y: at.Y}, {X: at.X + 5, Y: at.Y}}, calc.Outline, calc.Paper)
}

func drawMinus(s *sketch, at calc.Point, _ *item) {
	s.d.Line(calc.Point{X: at.X, Y: at.Y - 6}, calc.Point{X: at.X, Y: at.Y + 3}, calc.Outline)
	s.d.Line(calc.Point{X: at.X - 8, Y: at.Y + 3}, calc.Point{X: at.X + 8, Y: at.Y + 3}, calc.Heavy)
}

// drawLink draws the end of a cable that leaves the device above.
func drawLink(s *sketch, at calc.Point, _ *item) {
	s.d.Polyline([]calc.Point{{X: at.X + 9, Y: at.Y - 17}, {X: at.X + 9, Y: at.Y}, {X: at.X + 17, Y: at.Y}}, calc.Hidden)
	s.d.Polygon([]calc.Point{{X: at.X + 20, Y: at.Y}, {X: at.X + 15, Y: at.Y - 3}, {X: at.X + 15, Y: at.Y + 3}}, calc.Thin, calc.Ink)
}
