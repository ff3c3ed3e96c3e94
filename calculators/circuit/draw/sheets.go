package draw

import (
	"math"
	"strconv"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/judge"
)

// SheetWidth is how wide a sheet of a diagram may be: on A4 across, with
// 270 mm between its margins, lettering of 14 units then has 10 pt.
const SheetWidth = 1060.0

// Measures of a sheet.
const (
	border   = 10.0 // from the edge to what is drawn
	side     = 84.0 // room beside the tracks for the names of rails
	head     = 46.0 // over the supply rail
	foot     = 34.0 // under the ground rail, for the numbers of the tracks
	apart    = 14.0 // between tracks
	wayReach = 14.0 // from a connector's way to the edge of its box, beside its lettering
)

// Sheets draws the circuit as a wiring diagram: supply rails on top, the ground
// rail at the foot, current tracks numbered from left to right. What is wider
// than a sheet goes on on the next. It changes nothing of the assessment;
// goroutines may draw one at the same time.
func Sheets(a *judge.Assessment, v View) []*calc.Drawing {
	var list []*calc.Drawing
	for _, k := range sheets(a, v) {
		list = append(list, k.d)
	}
	return list
}

// Diagram draws all sheets of the wiring diagram under each other, as one
// drawing for a file.
func Diagram(a *judge.Assessment, v View) *calc.Drawing {
	list := Sheets(a, v)
	wide, high := 0.0, 0.0
	for _, d := range list {
		wide = math.Max(wide, d.Width)
		high += d.Height
	}
	all := calc.NewDrawing(wide, high, list[0].Title)
	y := 0.0
	for _, d := range list {
		done := all.Group(`transform="translate(0 ` + calc.FormatPlaces(y, 1) + `)"`)
		all.Add(d)
		done()
		y += d.Height
	}
	return all
}

func sheets(a *judge.Assessment, v View) []*sketch {
	k := newSketch(a, v)
	k.block = v.Block
	s := newStrip(k.p, k.all, k.extent)
	left, right := s.reach()
	var cuts [][2]int
	from, wide := 0, 0.0
	for c := range s.count {
		w := left[c] + right[c] + apart
		if c > from && wide+w > SheetWidth-2*border-2*side {
			cuts = append(cuts, [2]int{from, c})
			from, wide = c, 0
		}
		wide += w
	}
	cuts = append(cuts, [2]int{from, s.count})
	var list []*sketch
	for i, cut := range cuts {
		one := *k
		one.drawSheet(s, cut, left, right, i+1, len(cuts))
		list = append(list, &one)
	}
	return list
}

// reach is how far each column reaches to the left and right of its line.
func (s *strip) reach() (left, right []float64) {
	left, right = make([]float64, s.count), make([]float64, s.count)
	for i := range s.put {
		pl := &s.put[i]
		e := s.size(pl.it)
		left[pl.col] = math.Max(left[pl.col], e.left)
		right[pl.col] = math.Max(right[pl.col], e.right)
	}
	for c := range left {
		left[c], right[c] = math.Max(left[c], 8), math.Max(right[c], 20)
	}
	return left, right
}

// drawSheet draws the columns of one sheet.
func (k *sketch) drawSheet(s *strip, cut [2]int, left, right []float64, number, of int) {
	x := make([]float64, s.count)
	at := border + side
	for c := cut[0]; c < cut[1]; c++ {
		x[c] = at + left[c]
		at += left[c] + right[c] + apart
	}
	lines := 0
	if number == of {
		lines = len(k.bodyLines(k.state))
	}
	wide := math.Max(at+side+border, blockWide+2*border)
	top := border + head
	if len(k.p.Network.Wrong) > 0 {
		top += 22
	}
	notes := top + s.rail + foot
	high := notes + math.Max(float64(lines)*bodyHigh+6, blockHigh) + border
	k.d = calc.NewDrawing(wide, high, k.alternative())
	heading := k.heading()
	if of > 1 {
		heading += ", sheet " + strconv.Itoa(number) + " of " + strconv.Itoa(of)
	}
	k.letter(calc.Point{X: border + 6, Y: border + 17}, heading, nil)
	wide = math.Max(wide, calc.TextWidth(heading, letterSize)+2*border+12)
	if number == of {
		wide = math.Max(wide, k.bodyWide()+blockWide+4*border)
	}
	k.d.Width = wide
	if len(k.p.Network.Wrong) > 0 {
		k.wrongMark()
	}
	edges := [2]float64{border + side - 8, at + 8}
	for i := range s.leads {
		if l := &s.leads[i]; l.col >= cut[0] && l.col < cut[1] {
			k.rule(upright(x[l.col], top+l.from, top+l.to), calc.Outline)
		}
	}
	for i := range s.bars {
		k.bar(s, &s.bars[i], cut, x, top, edges)
	}
	for i := range s.put {
		if pl := &s.put[i]; pl.col >= cut[0] && pl.col < cut[1] {
			k.stand(s, pl, x[pl.col], top)
		}
	}
	k.joints()
	k.connectors(s, cut, x, top)
	k.groundRail(s, cut, x, top+s.rail, edges)
	if number == of {
		k.body(notes)
	}
	k.frame(number, of)
	k.write()
}

// rule draws a plain line and notes it.
func (k *sketch) rule(s segment, stroke calc.Stroke) {
	if s.from == s.to {
		return
	}
	k.d.Line(s.from, s.to, stroke)
	k.lines = append(k.lines, track{s, nil})
}

// bar draws the part of a node that lies on this sheet, and names it where it goes on on another sheet.
func (k *sketch) bar(s *strip, b *bar, cut [2]int, x []float64, top float64, edges [2]float64) {
	first, last := b.reach()
	if last < cut[0] || first >= cut[1] {
		return
	}
	y := top + b.y
	from, to := edges[0], edges[1]
	if first >= cut[0] {
		from = x[first]
	}
	if last < cut[1] {
		to = x[last]
	}
	name := b.name
	if name == "" && b.node >= 0 {
		name = s.terminal(b.node)
	}
	stroke := calc.Outline
	if b.rail {
		stroke = calc.Heavy
		switch {
		case name == "15" && last < cut[1]:
			k.letter(calc.Point{X: to - calc.TextWidth(name, letterSize), Y: y - 5}, name, nil)
		case name != "15" && first >= cut[0]:
			k.letter(calc.Point{X: from - 4 - calc.TextWidth(b.name, letterSize), Y: y + 5}, b.name, nil)
			k.letter(calc.Point{X: from + 4, Y: y - 5}, s.terminal(b.node)+" "+figuresOf(s.Solutions[k.state]).volts(s.Solutions[k.state].Volts[b.node]), nil)
		}
	}
	k.rule(level(from, to, y), stroke)
	if first < cut[0] {
		k.goesOn(calc.Point{X: from, Y: y}, -1, name)
	}
	if last >= cut[1] {
		k.goesOn(calc.Point{X: to, Y: y}, 1, name)
	}
}

// goesOn marks where a line goes on on another sheet.
func (k *sketch) goesOn(at calc.Point, way float64, name string) {
	k.marks = append(k.marks, at)
	k.d.Polygon([]calc.Point{{X: at.X + 8*way, Y: at.Y}, {X: at.X, Y: at.Y - 5}, {X: at.X, Y: at.Y + 5}}, calc.Thin, calc.Ink)
	for i, line := range wrapTo(broken(name, edgeName), edgeName) {
		p := calc.Point{X: at.X - side + 12, Y: at.Y + 5 + float64(i)*lineStep}
		if way > 0 {
			p.X = at.X + 10
		}
		k.letter(p, line, nil)
	}
}

// edgeName is how many letters of a name stand in one line at a sheet's edge.
const edgeName = 7

// broken parts the words of a text that are longer than a line.
func broken(text string, longest int) string {
	var b []rune
	run := 0
	for _, r := range text {
		if run++; r == ' ' {
			run = 0
		}
		if run == longest {
			b = append(b, '-', ' ')
			run = 1
		}
		b = append(b, r)
	}
	return string(b)
}

// stand draws an item in its place.
func (k *sketch) stand(s *strip, pl *place, x, top float64) {
	at := calc.Point{X: x, Y: top + pl.y}
	if pl.hidden {
		return
	}
	switch {
	case pl.it.kind == jointItem:
		if pl.y > 0 { // at the top of a track nothing comes to it
			k.rule(upright(x, at.Y, at.Y+pl.h), calc.Outline)
		}
		k.lettersAt(pl.it, calc.Point{X: x + 5, Y: at.Y + 12}, k.p.letters(pl.it, k.state))
	case s.isWire(pl.it):
		k.wire(pl, at)
	case s.isGround(pl.it) && math.Abs(pl.y+pl.h-s.rail) < 0.1:
		k.rule(upright(x, at.Y, at.Y+pl.h), calc.Outline)
		k.d.Circle(calc.Point{X: x, Y: at.Y + pl.h}, 4, calc.Outline, calc.Paper)
		k.lettersAt(pl.it, calc.Point{X: x + 7, Y: at.Y + 13}, k.p.letters(pl.it, k.state))
	default:
		k.item(pl.it, at, pl.h)
		if sym := k.p.symbolOf(pl.it); sym.starts && pl.it.kind == branchItem && pl.y > 0 { // an output under a bar
			line := upright(x, at.Y, at.Y+pl.h/2-sym.body)
			k.d.Line(line.from, line.to, calc.Outline)
			k.stubs = append(k.stubs, track{line, nil})
		}
	}
}

func (k *sketch) lettersAt(it *item, at calc.Point, lines []string) {
	for _, line := range lines {
		k.letter(at, line, it)
		at.Y += lineStep
	}
}

// wire draws a wire over its whole length, lettered at both ends where it is
// long, with an arrow the way its current flows.
func (k *sketch) wire(pl *place, at calc.Point) {
	w := k.p.part(pl.it.branch).(*circuit.Wire)
	to := calc.Point{X: at.X, Y: at.Y + pl.h}
	body, stripe := circuit.SplitColor(w.Color)
	k.d.Conductor([]calc.Point{at, to}, 4, inkOf(wireInks[:], body), inkOf(wireInks[:], stripe))
	k.wires = append(k.wires, track{segment{at, to}, nil})
	k.symbols = append(k.symbols, area{at.X - 4, at.Y, at.X + 4, to.Y, pl.it, "wire"})
	text := k.p.letters(pl.it, k.state)
	k.lettersAt(pl.it, calc.Point{X: at.X + 8, Y: at.Y + 13}, text)
	short := wrap(w.Name + " " + w.Color + " " + w.Size)
	if pl.h > float64(len(text)+len(short))*lineStep+30 {
		k.lettersAt(pl.it, calc.Point{X: at.X + 8, Y: to.Y + 9 - float64(len(short))*lineStep}, short)
	}
	k.arrow(pl.it, calc.Point{X: at.X, Y: at.Y + pl.h/2})
}

// leastArrow is the current in A from which an arrow shows its direction.
const leastArrow = 1e-4

// arrow shows the way that current flows through a branch.
func (k *sketch) arrow(it *item, at calc.Point) {
	sol := k.p.Solutions[k.state]
	amps := sol.Flows[it.branch].Current
	if !sol.Solved() || math.Abs(amps) < leastArrow {
		return
	}
	down := 1.0
	if it.flip != (amps < 0) {
		down = -1
	}
	k.d.Polygon([]calc.Point{{X: at.X, Y: at.Y + 6*down}, {X: at.X - 5.5, Y: at.Y - 5*down}, {X: at.X + 5.5, Y: at.Y - 5*down}}, calc.Thin, calc.Ink)
}

// connectors draws a box around the ways of a connector that stand in one row
// beside each other.
func (k *sketch) connectors(s *strip, cut [2]int, x []float64, top float64) {
	boxed := make([]bool, len(s.put))
	for i := range s.put {
		a := &s.put[i]
		if boxed[i] || !s.isWay(a) || a.col < cut[0] || a.col >= cut[1] {
			continue
		}
		from, to := a.col, a.col
		for grown := true; grown; {
			grown = false
			for j := range s.put {
				b := &s.put[j]
				if !boxed[j] && s.sameConnector(a, b) && math.Abs(a.y-b.y) < 0.1 &&
					b.col < cut[1] && b.col >= cut[0] && b.col >= from-1 && b.col <= to+1 {
					boxed[j], grown = true, true
					from, to = min(from, b.col), max(to, b.col)
				}
			}
		}
		right := 0.0
		for _, line := range k.p.letters(a.it, k.state) {
			right = math.Max(right, calc.TextWidth(line, letterSize))
		}
		k.d.Rect(calc.Point{X: x[from] - 11, Y: top + a.y + 1}, x[to]-x[from]+11+wayReach+right, a.h-2, calc.Thin, calc.Empty)
	}
}

// groundRail draws the rail at the foot and the numbers of the tracks.
func (k *sketch) groundRail(s *strip, cut [2]int, x []float64, y float64, edges [2]float64) {
	k.foot = y
	k.d.Line(calc.Point{X: edges[0], Y: y}, calc.Point{X: edges[1], Y: y}, calc.Heavy)
	k.letter(calc.Point{X: edges[0] - 4 - calc.TextWidth("31", letterSize), Y: y + 5}, "31", nil)
	for c := cut[0]; c < cut[1]; c++ {
		number := strconv.Itoa(c + 1)
		k.letter(calc.Point{X: x[c] - calc.TextWidth(number, letterSize)/2, Y: y + 22}, number, nil)
	}
}
