package draw

import (
	"math"

	"baybook/calculators/calc"
)

// Distances of the drawing, in its own units: one is a pixel on a phone.
const (
	letterSize = 14.0 // size of lettering
	lineStep   = 15.5 // from one line of lettering to the next
	drop       = 8.0  // from a rail down to what hangs on it
	gutter     = 8.0  // between layout nodes side by side
	lane       = 9.0  // room of a line that runs down beside layout nodes
	below      = 9.0  // from layout nodes down to the rail on which they meet
)

// A box is a layout node with its size, and its parts with their places in it.
type box struct {
	st *layoutNode
	// within is the width that it was made for.
	within int
	w, h   float64
	// enter is where the line comes in at the top, leave where it goes out at
	// the bottom, both from the left.
	enter, leave float64
	// itemsHigh is how high the items are together.
	itemsHigh float64
	kids      []placed
	after     *placed
	feeds     []segment // lines of the node at the top of the kids
	meets     []segment // lines of the node on which they meet
}

// placed is a box with its place in another.
type placed struct {
	box  *box
	x, y float64
}

// A segment is a straight line, level or upright.
type segment struct{ from, to calc.Point }

// A fitter finds the flattest arrangement of layout nodes within a width.
type fitter struct{ size func(*item) extent }

// An extent is how far a symbol with its lettering reaches from its line, and
// how high it is.
type extent struct{ left, right, high float64 }

// fit arranges a layout node in a width.
func (f *fitter) fit(st *layoutNode, width float64) *box {
	for _, b := range st.known {
		if b.within == int(width) {
			return b
		}
	}
	b := &box{st: st, within: int(width)}
	left, right := 0.0, 0.0
	for i := range st.items {
		e := f.extent(&st.items[i])
		left, right = math.Max(left, e.left), math.Max(right, e.right)
		b.itemsHigh += e.high
	}
	b.enter, b.leave = left, left
	b.w, b.h = left+right, b.itemsHigh
	if len(st.kids) > 0 {
		f.addKids(b, left, right, width)
	}
	if st.after != nil {
		f.addAfter(b, width)
	}
	st.known = append(st.known, b)
	return b
}

func (f *fitter) extent(it *item) extent {
	if !it.measured {
		it.reach, it.measured = f.size(it), true
	}
	return it.reach
}

// addKids puts the flattest arrangement of the kids under the items.
func (f *fitter) addKids(b *box, left, right, width float64) {
	best := f.row(b.st, width)
	for columns := 1; columns <= min(len(b.st.kids), 6); columns++ {
		if a := f.columns(b.st, columns, width); a.better(best, width) {
			best = a
		}
	}
	if b.st.bare && b.st.after == nil {
		if a := f.flow(b.st, width); a.better(best, width) {
			best = a
		}
	}
	shift := 0.0
	switch {
	case len(b.st.items) == 0:
		b.enter = best.enter
	case best.straight:
		b.enter = math.Max(left, best.enter)
		shift = b.enter - best.enter
	}
	b.kids = best.kids
	for i := range b.kids {
		b.kids[i].x += shift
		b.kids[i].y += b.itemsHigh
	}
	b.feeds, b.meets = move(best.feeds, shift, b.itemsHigh), move(best.meets, shift, b.itemsHigh)
	if at := best.enter + shift; at != b.enter && !b.st.bare {
		b.feeds = append(b.feeds, level(b.enter, at, b.itemsHigh))
	}
	b.leave = best.leave + shift
	b.w = math.Max(b.enter+right, best.w+shift)
	b.h = b.itemsHigh + best.h
}

// addAfter puts what follows under the rail on which the kids meet.
func (f *fitter) addAfter(b *box, width float64) {
	next := f.fit(b.st.after, width)
	x := math.Max(0, math.Min(b.leave-next.enter, width-next.w))
	rail := b.h
	b.after = &placed{next, x, rail + drop}
	in := x + next.enter
	b.meets = append(b.meets, level(b.leave, in, rail), upright(in, rail, rail+drop))
	b.w = math.Max(b.w, x+next.w)
	b.h = rail + drop + next.h
	b.leave = x + next.leave
}

func move(list []segment, x, y float64) []segment {
	out := make([]segment, len(list))
	for i, s := range list {
		out[i] = segment{calc.Point{X: s.from.X + x, Y: s.from.Y + y}, calc.Point{X: s.to.X + x, Y: s.to.Y + y}}
	}
	return out
}

// An arrangement is some layout nodes with their places, side by side or in columns.
type arrangement struct {
	w, h         float64
	enter, leave float64
	// straight is true where the line from above goes straight on into the
	// first layoutNode.
	straight     bool
	kids         []placed
	feeds, meets []segment
}

// feed adds lines at the top of the kids.
func (a *arrangement) feed(lines ...segment) { a.feeds = append(a.feeds, lines...) }

// meet adds lines at the foot of the kids.
func (a *arrangement) meet(lines ...segment) { a.meets = append(a.meets, lines...) }

// better reports whether an arrangement fits the width where the other does
// not, or is less high.
func (a *arrangement) better(b *arrangement, width float64) bool {
	if fits := a.w <= width; fits != (b.w <= width) {
		return fits
	}
	if a.w > width && a.w != b.w {
		return a.w < b.w
	}
	return a.h < b.h-1
}

// row arranges the kids of a layout node side by side.
func (f *fitter) row(st *layoutNode, width float64) *arrangement {
	a := &arrangement{straight: true, kids: make([]placed, 0, len(st.kids))}
	x, deep := 0.0, 0.0
	var ports []calc.Point
	for _, k := range st.kids {
		b := f.fit(k, width/float64(len(st.kids))-gutter)
		a.kids = append(a.kids, placed{b, x, drop})
		if !st.bare {
			a.feed(upright(x+b.enter, 0, drop))
		}
		if k.exit >= 0 {
			ports = append(ports, calc.Point{X: x + b.leave, Y: drop + b.h})
		}
		deep = math.Max(deep, b.h)
		x += b.w + gutter
	}
	a.w, a.h = x-gutter, drop+deep
	first, last := a.kids[0], a.kids[len(a.kids)-1]
	a.enter = first.x + first.box.enter
	if !st.bare {
		a.feed(level(a.enter, last.x+last.box.enter, 0))
	}
	if len(ports) > 0 {
		a.h += below
		for _, p := range ports {
			a.meet(upright(p.X, p.Y, a.h))
		}
		a.leave = ports[0].X
		a.meet(level(ports[0].X, ports[len(ports)-1].X, a.h))
	}
	return a
}

// columns arranges the kids of a layout node in the given number of columns,
// the next one always in the column that is least high: a line runs down at
// the left of each, and one at the right where layout nodes end on a node to
// meet.
func (f *fitter) columns(st *layoutNode, columns int, width float64) *arrangement {
	a := &arrangement{}
	share := width/float64(columns) - lane - gutter
	stacks := make([]stack, columns)
	for _, k := range st.kids {
		b := f.fit(k, share-lane)
		least := 0
		for i := range stacks {
			if stacks[i].high < stacks[least].high-1 {
				least = i
			}
		}
		stacks[least].add(b, st.bare)
	}
	x := 0.0
	for i := range stacks {
		if len(stacks[i].kids) == 0 {
			continue
		}
		x = stacks[i].settle(a, x, st.bare) + gutter
	}
	a.w = x - gutter
	a.finish(stacks, st.bare)
	return a
}

// flow arranges roots, which no line joins, in rows as words are set.
func (f *fitter) flow(st *layoutNode, width float64) *arrangement {
	a := &arrangement{}
	x, y, deep := 0.0, 0.0, 0.0
	for _, k := range st.kids {
		b := f.fit(k, width)
		if x > 0 && x+b.w > width {
			x, y, deep = 0, y+deep+2*gutter, 0
		}
		a.kids = append(a.kids, placed{b, x, y})
		a.w = math.Max(a.w, x+b.w)
		deep = math.Max(deep, b.h)
		a.h = y + deep
		x += b.w + 2*gutter
	}
	return a
}

// A stack is one column being filled.
type stack struct {
	kids        []placed
	high        float64
	wide        float64
	left, right float64 // where its lines run down, from the left of all
	first       float64 // y at which the right one begins, -1 for none
}

// add puts a box under the others of its column.
func (s *stack) add(b *box, bare bool) {
	y := s.high + drop
	if bare && s.high == 0 {
		y = 0
	}
	s.kids = append(s.kids, placed{b, 0, y})
	s.high = y + b.h + gutter
	if b.st.exit >= 0 {
		s.high += below
	}
	s.wide = math.Max(s.wide, b.w)
}

// settle gives the boxes of a column their places, draws its lines, and says
// where the column ends.
func (s *stack) settle(a *arrangement, x float64, bare bool) float64 {
	s.left, s.first = x+2, -1
	start := x
	switch {
	case bare:
	case len(s.kids) == 1: // straight down from the rail
		s.left = x + s.kids[0].box.enter
	default:
		start += lane
	}
	s.right = start + s.wide + 4
	for i, k := range s.kids {
		k.x = start
		a.kids = append(a.kids, k)
		if !bare && len(s.kids) > 1 {
			a.feed(level(s.left, k.x+k.box.enter, k.y-drop/2), upright(k.x+k.box.enter, k.y-drop/2, k.y))
		}
		switch {
		case k.box.st.exit < 0:
		case i == len(s.kids)-1 && s.first < 0: // straight down to the rail
			s.right, s.first = k.x+k.box.leave, k.y+k.box.h
		default:
			y := k.y + k.box.h + below - 3
			a.meet(upright(k.x+k.box.leave, k.y+k.box.h, y), level(k.x+k.box.leave, s.right, y))
			if s.first < 0 {
				s.first = y
			}
		}
	}
	if last := s.kids[len(s.kids)-1].y; !bare && len(s.kids) > 1 {
		a.feed(upright(s.left, 0, last-drop/2))
	} else if !bare {
		a.feed(upright(s.left, 0, last))
	}
	a.h = math.Max(a.h, s.high-gutter)
	if s.first >= 0 {
		return math.Max(s.right+4, start+s.wide)
	}
	return start + s.wide
}

// finish joins the columns by a rail at the top, and by one at the bottom
// where any of their layout nodes meet.
func (a *arrangement) finish(stacks []stack, bare bool) {
	lastFeed, firstMeet, lastMeet := -1, -1, -1
	for i := range stacks {
		if len(stacks[i].kids) == 0 {
			continue
		}
		lastFeed = i
		if stacks[i].first >= 0 {
			if firstMeet < 0 {
				firstMeet = i
			}
			lastMeet = i
		}
	}
	a.enter = stacks[0].left
	if !bare && lastFeed > 0 {
		a.feed(level(stacks[0].left, stacks[lastFeed].left, 0))
	}
	if firstMeet < 0 {
		return
	}
	a.h += below
	for i := range stacks {
		if len(stacks[i].kids) > 0 && stacks[i].first >= 0 {
			a.meet(upright(stacks[i].right, stacks[i].first, a.h))
		}
	}
	a.leave = stacks[firstMeet].right
	a.meet(level(stacks[firstMeet].right, stacks[lastMeet].right, a.h))
}

func upright(x, from, to float64) segment {
	return segment{calc.Point{X: x, Y: from}, calc.Point{X: x, Y: to}}
}

func level(from, to, y float64) segment {
	return segment{calc.Point{X: from, Y: y}, calc.Point{X: to, Y: y}}
}
