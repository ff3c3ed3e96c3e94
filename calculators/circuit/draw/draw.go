// Package draw lays a circuit out and draws it after IEC 60617.
package draw

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/judge"
)

// PhoneWidth is the width of a drawing that a phone 360 px wide shows at its
// own size, within the borders of a sheet.
const PhoneWidth = 300.0

// margin is the free edge of a drawing.
const margin = 8.0

// A sketch is a drawing being made, with the geometry of what is in it.
type sketch struct {
	p     *layouter
	fit   *fitter
	d     *calc.Drawing
	state int
	all   *layoutNode
	block TitleBlock
	// symbols and letters are the areas that they fill; lines are the nodes'
	// own lines and wires the wires, each with what it belongs to.
	symbols, letters []area
	lines            []track
	// wires are the wires of a sheet, stubs the lines of its symbols, dots its
	// junctions, marks where lines go on on another sheet; foot is where its ground rail lies.
	wires, stubs []track
	dots, marks  []calc.Point
	foot         float64
}

// An area is a rectangle of the drawing and the item that fills it.
type area struct {
	left, top, right, foot float64
	it                     *item
	text                   string
}

// A track is a straight line of the drawing and the box that it belongs to.
type track struct {
	segment
	of *box
}

// A View says what of a circuit to show.
type View struct {
	// State is the name of the state to draw; "" for the one in which the
	// loads draw most.
	State string
	// Width is how wide the drawing may be, in its own units; 0 for the width
	// of a phone.
	Width float64
	// Block is the title block under the drawing; the zero value is none.
	Block TitleBlock
}

// StateOf is the index of the state that a view of a circuit shows.
func (v View) StateOf(a *judge.Assessment) int {
	for i := range a.Network.States {
		if a.Network.States[i].Name == v.State {
			return i
		}
	}
	return a.Busiest()
}

// Drawing draws the circuit in one state, no wider than is asked where that
// can be. It changes nothing of the assessment; goroutines may draw one at
// the same time.
func Drawing(a *judge.Assessment, v View) *calc.Drawing { return drawn(a, v).d }

func drawn(a *judge.Assessment, v View) *sketch {
	width := v.Width
	if width == 0 {
		width = PhoneWidth
	}
	k := newSketch(a, v)
	k.block = v.Block
	k.drawWithin(width)
	return k
}

// newSketch lays out the nodes of a circuit.
func newSketch(a *judge.Assessment, v View) *sketch {
	k := &sketch{p: newLayouter(a), state: v.StateOf(a)}
	k.fit = &fitter{size: k.extent}
	k.all = k.p.plan()
	return k
}

// drawWithin draws it in a width.
func (k *sketch) drawWithin(width float64) {
	k.symbols, k.letters, k.lines, k.stubs, k.dots = nil, nil, nil, nil, nil
	b := k.fit.fit(k.all, width-2*margin)
	wide, high := k.size(b)
	k.d = calc.NewDrawing(wide, high, k.alternative())
	k.letter(calc.Point{X: margin, Y: margin + 9}, k.heading(), nil)
	if len(k.p.Network.Wrong) > 0 {
		k.wrongMark()
	}
	k.draw(b, margin, margin+k.head())
	k.joints()
	k.body(margin + k.head() + b.h + 10)
	if k.block != (TitleBlock{}) {
		k.drawBlock()
	}
	k.write()
}

// size is how wide and high the drawing of a box is, with all around it.
func (k *sketch) size(b *box) (wide, high float64) {
	wide = math.Max(math.Max(b.w, k.bodyWide()), calc.TextWidth(k.heading(), letterSize))
	return wide + 2*margin, k.head() + b.h + 2*margin + float64(len(k.bodyLines(k.state)))*bodyHigh + 6
}

func (k *sketch) heading() string { return "State: " + k.p.Network.States[k.state].Name }

// head is the height of what stands above the circuit.
func (k *sketch) head() float64 {
	if len(k.p.Network.Wrong) > 0 {
		return 44
	}
	return 18
}

// write writes the lettering.
func (k *sketch) write() {
	done := k.d.Group(`font-family="sans-serif" font-size="` + calc.Format(letterSize, 3) + `" fill="currentColor"`)
	var b []byte
	for _, l := range k.letters {
		b = append(b, `<text x="`...)
		b = append(b, calc.FormatPlaces(l.left, 1)...)
		b = append(b, `" y="`...)
		b = append(b, calc.FormatPlaces(l.foot-0.2*letterSize, 1)...)
		b = append(b, `">`...)
		b = calc.AppendEscaped(b, l.text)
		b = append(b, `</text>`...)
	}
	k.d.Raw(string(b))
	done()
}

// wrongMark heads a drawing that shows a mistake.
func (k *sketch) wrongMark() {
	k.d.Rect(calc.Point{X: margin + 4, Y: margin + 18}, 76, 20, calc.Heavy, calc.Empty)
	k.d.TextSized(calc.Point{X: margin + 42, Y: margin + 33}, calc.Middle, 14, "WRONG")
}

// extent is the space that an item takes. It is the same in every state, so
// that nothing jumps when a key is turned.
func (k *sketch) extent(it *item) extent {
	sym := k.p.symbolOf(it)
	wide, lines := 0.0, 0
	for state := range k.p.Network.States {
		text := k.p.letters(it, state)
		lines = max(lines, len(text))
		for _, line := range text {
			wide = math.Max(wide, calc.TextWidth(line, letterSize))
		}
	}
	return extent{sym.left, sym.right + 4 + wide, math.Max(sym.high, float64(lines)*lineStep+5)}
}

// draw draws a box and all in it.
func (k *sketch) draw(b *box, x, y float64) {
	at := y
	for i := range b.st.items {
		it := &b.st.items[i]
		high := k.fit.extent(it).high
		k.item(it, calc.Point{X: x + b.enter, Y: at}, high)
		at += high
	}
	for _, list := range [...][]segment{b.feeds, b.meets} {
		for _, s := range move(list, x, y) {
			if s.from == s.to {
				continue
			}
			k.d.Line(s.from, s.to, calc.Outline)
			k.lines = append(k.lines, track{s, b})
		}
	}
	for _, kid := range b.kids {
		k.draw(kid.box, x+kid.x, y+kid.y)
	}
	if b.after != nil {
		k.draw(b.after.box, x+b.after.x, y+b.after.y)
	}
}

// item draws one symbol with its lines and its letters; at is where its line
// comes in.
func (k *sketch) item(it *item, at calc.Point, high float64) {
	sym := k.p.symbolOf(it)
	middle := calc.Point{X: at.X, Y: at.Y + high/2}
	foot := calc.Point{X: at.X, Y: at.Y + high}
	if sym.name == "wire" {
		body, stripe := circuit.SplitColor(k.p.part(it.branch).(*circuit.Wire).Color)
		k.d.Conductor([]calc.Point{at, foot}, 3.6, inkOf(wireInks[:], body), inkOf(wireInks[:], stripe))
		k.arrow(it, middle)
	} else {
		if !sym.starts {
			k.d.Line(at, calc.Point{X: at.X, Y: middle.Y - sym.body}, calc.Outline)
		}
		if !sym.ends {
			k.d.Line(calc.Point{X: at.X, Y: middle.Y + sym.body}, foot, calc.Outline)
		}
		sym.draw(k, middle, it)
	}
	stub := segment{at, foot}
	if sym.starts {
		stub.from = middle
	}
	if sym.ends {
		stub.to = middle
	}
	k.stubs = append(k.stubs, track{stub, nil})
	k.symbols = append(k.symbols, area{at.X - sym.left, at.Y, at.X + sym.right, foot.Y, it, sym.name})
	text := k.p.letters(it, k.state)
	y := middle.Y - float64(len(text))*lineStep/2 + 0.85*letterSize
	for _, line := range text {
		k.letter(calc.Point{X: at.X + sym.right + 3, Y: y}, line, it)
		y += lineStep
	}
}

// letter notes a line of lettering and its area; all lettering is written at
// the end in one group, for a circuit holds hundreds of lines.
func (k *sketch) letter(at calc.Point, text string, it *item) {
	k.letters = append(k.letters, area{at.X, at.Y - 0.75*letterSize, at.X + calc.TextWidth(text, letterSize), at.Y + 0.2*letterSize, it, text})
}

// A bodyLine is what lies between two points of the body, in two lines.
type bodyLine struct{ points, values string }

// bodyLines lists what lies between the points of the body in a state.
func (k *sketch) bodyLines(state int) []bodyLine {
	var lines []bodyLine
	n := k.p.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		if e, ok := n.Of(b).(*circuit.Body); ok {
			f, fig := k.p.Solutions[state].Flows[i], figuresOf(k.p.Solutions[state])
			lines = append(lines, bodyLine{e.From + " to " + e.To, format.Ohms(e.Ohms) + ", " + fig.amps(f.Current) + ", " + fig.drop(f.Drop)})
		}
	}
	return lines
}

// Measures of a line about the body: its symbol, and how high it is.
const (
	bodySymbol = 34.0
	bodyHigh   = 30.0
)

// bodyWide is how wide the lines about the body are, in any state.
func (k *sketch) bodyWide() float64 {
	wide := 0.0
	for state := range k.p.Network.States {
		for _, l := range k.bodyLines(state) {
			wide = math.Max(wide, bodySymbol+math.Max(calc.TextWidth(l.points, letterSize), calc.TextWidth(l.values, letterSize)))
		}
	}
	return wide
}

// body draws the metal between the points of the body, under the circuit.
func (k *sketch) body(y float64) {
	for _, line := range k.bodyLines(k.state) {
		middle := y + 11
		k.d.Line(calc.Point{X: margin, Y: middle}, calc.Point{X: margin + 28, Y: middle}, calc.Heavy)
		k.d.Rect(calc.Point{X: margin + 7, Y: middle - 4}, 14, 8, calc.Outline, calc.Paper)
		k.letter(calc.Point{X: margin + bodySymbol, Y: y + 9}, line.points, nil)
		k.letter(calc.Point{X: margin + bodySymbol, Y: y + 9 + lineStep}, line.values, nil)
		y += bodyHigh
	}
}

// alternative is the drawing in words, for those who do not see it.
func (k *sketch) alternative() string {
	n := k.p.Network
	text := "Circuit"
	if n.Title != "" {
		text += ": " + n.Title
	}
	text += ". In the state " + n.States[k.state].Name
	if !k.p.Solutions[k.state].Solved() {
		return text + " there is no solution."
	}
	sep := ", "
	for i := range n.Branches {
		b := &n.Branches[i]
		if f := k.p.Solutions[k.state].Flows[i]; n.Draws(b) {
			text += sep + n.NameOf(b) + " has " + format.NodeVolts(f.Drop) + " and draws " + format.Amps(math.Abs(f.Current))
			sep = "; "
		}
	}
	return text + "."
}
