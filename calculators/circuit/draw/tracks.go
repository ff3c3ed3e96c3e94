package draw

import (
	"math"

	"baybook/calculators/circuit"
)

// A wiring diagram for a desk or for paper has its supply rails on top, the
// ground rail at the foot and the current tracks side by side between them,
// as IEC 61082 and DIN 72552 have it. A track is a column of symbols.

// A branching is a layout node with the columns that it takes.
type branching struct {
	st    *layoutNode
	col   int
	kids  []*branching
	after *branching
	// outs are the columns that go on to the node on which it ends.
	outs []int
}

// A strip is a whole diagram as one strip of tracks, before it is cut into
// sheets.
type strip struct {
	*layouter
	size  func(*item) extent
	tree  *branching
	count int       // columns
	low   []float64 // of each column: where the next thing may stand
	tail  []int     // of each column: its last place, -1 for none
	put   []place
	leads []lead
	bars  []bar
	// least holds how far down the ways of a connector stand at least, so that
	// they stand in one row.
	least map[int]float64
	rail  float64 // of the ground rail
}

// A place is where an item stands: its column, its top and its height.
type place struct {
	it     *item
	col    int
	y, h   float64
	hidden bool // where a neighbor's ground point stands for it
}

// A lead is a plain line down a column.
type lead struct {
	col      int
	from, to float64
}

// A bar is a node drawn level: the columns that come to it from above and
// leave it below.
type bar struct {
	y        float64
	node     int
	up, down []int
	name     string
	rail     bool
}

// first and last are the outermost columns of a bar.
func (b *bar) first() int { return b.outermost(func(a, c int) bool { return c < a }) }
func (b *bar) last() int  { return b.outermost(func(a, c int) bool { return c > a }) }

func (b *bar) outermost(beyond func(a, c int) bool) int {
	best := -1
	for _, list := range [...][]int{b.up, b.down} {
		for _, c := range list {
			if best < 0 || beyond(best, c) {
				best = c
			}
		}
	}
	return best
}

// newStrip lays a circuit out as one strip.
func newStrip(p *layouter, all *layoutNode, size func(*item) extent) *strip {
	s := &strip{layouter: p, size: size, least: map[int]float64{}}
	s.tree = s.branch(all, 0)
	s.count = max(s.count, 1)
	const rounds = 8 // rows settle in two or three; a ring of them never does
	for round := range rounds {
		s.settle()
		if !s.level() {
			break
		}
		if round == rounds-1 {
			s.least = nil
			s.settle()
		}
	}
	s.toGround()
	return s
}

// branch gives a layout node and all under it their columns.
func (s *strip) branch(st *layoutNode, col int) *branching {
	b := &branching{st: st, col: col}
	s.count = max(s.count, col+1)
	for i, kid := range st.kids {
		at := col
		if i > 0 {
			at = s.count
		}
		k := s.branch(kid, at)
		b.kids = append(b.kids, k)
		if kid.exit >= 0 {
			b.outs = append(b.outs, k.outs...)
		}
	}
	switch {
	case st.after != nil:
		at := col
		if len(b.outs) > 0 {
			at = b.outs[0]
		}
		b.after = s.branch(st.after, at)
	case len(st.kids) == 0 && st.exit >= 0:
		b.outs = []int{col}
	}
	return b
}

// meets are the columns that end on the node after which a branching goes on.
func (b *branching) meets() []int { return b.outs }

// leaves are the columns that go on below a branching.
func (b *branching) leaves() []int {
	if b.after != nil {
		return b.after.leaves()
	}
	return b.outs
}

// settle gives every item its place.
func (s *strip) settle() {
	s.low, s.tail = make([]float64, s.count), make([]int, s.count)
	for i := range s.tail {
		s.tail[i] = -1
	}
	s.put, s.leads, s.bars = nil, nil, nil
	s.place(s.tree, 0, false, false)
}

// place stands the items of a branching under each other from y on. Its bar is
// left out where the one above it is drawn for both; key is true behind the
// ignition switch.
func (s *strip) place(b *branching, y float64, shared, key bool) {
	last := -1
	for i := range b.st.items {
		it := &b.st.items[i]
		if it.kind == railItem || it.kind == jointItem {
			last = it.node
		}
		if it.kind == railItem {
			continue // its bar stands for it
		}
		y = s.stand(it, b.col, y)
		key = s.behindKey(it, key)
	}
	if len(b.kids) > 0 {
		if !b.st.bare && !shared {
			at := s.feed(b, y, last, key)
			y = at + drop
			for _, c := range entries(b, nil) {
				s.lead(c, at, y)
				s.low[c] = math.Max(s.low[c], y)
			}
		}
		for _, k := range b.kids {
			s.place(k, y, !b.st.bare && len(k.st.items) == 0 && len(k.kids) > 0, key)
		}
	}
	if b.after != nil {
		s.join(b, key)
	}
}

// stand stands an item in a column, and stretches what is above it where it
// must stand lower than it could.
func (s *strip) stand(it *item, col int, y float64) float64 {
	if it.branch >= 0 {
		if at, ok := s.least[it.branch]; ok && at > y {
			s.stretch(col, y, at)
			y = at
		}
	}
	high := s.size(it).high
	s.put = append(s.put, place{it: it, col: col, y: y, h: high})
	s.tail[col] = len(s.put) - 1
	s.low[col] = y + high
	return y + high
}

// stretch fills a column down to y: by its last wire, else by a lead.
func (s *strip) stretch(col int, from, to float64) {
	if to <= from {
		return
	}
	if t := s.tail[col]; t >= 0 && s.isWire(s.put[t].it) && math.Abs(s.put[t].y+s.put[t].h-from) < 0.1 {
		s.put[t].h = to - s.put[t].y
	} else {
		s.lead(col, from, to)
	}
	s.low[col] = math.Max(s.low[col], to)
}

func (s *strip) lead(col int, from, to float64) {
	s.leads = append(s.leads, lead{col, from, to})
}

func (s *strip) isWire(it *item) bool {
	return it.branch >= 0 && s.Network.Branches[it.branch].Kind == circuit.WireKind
}

// behindKey reports whether the way is still behind the ignition switch after
// an item.
func (s *strip) behindKey(it *item, key bool) bool {
	if it.branch < 0 {
		return key
	}
	switch b := &s.Network.Branches[it.branch]; b.Kind {
	case circuit.SwitchKind:
		name := s.Network.NameOf(b)
		return name == "key" || name == "ignition"
	case circuit.WireKind, circuit.FuseKind, circuit.ConnectorKind:
		return key
	}
	return false
}

// feed draws the bar from which the kids of a branching hang.
func (s *strip) feed(b *branching, y float64, node int, key bool) float64 {
	it := bar{y: y, node: node}
	if len(b.st.items) > 0 && b.st.items[0].kind != railItem || len(b.st.items) > 1 {
		it.up = []int{b.col}
	} else if len(b.st.items) == 1 {
		it.rail, it.name = true, s.railName(node)
	}
	if key && len(b.kids) > 1 {
		it.rail, it.name = true, "15"
	}
	it.down = entries(b, nil)
	if len(it.down) > 1 || len(it.up) == 0 {
		for c := it.first(); c <= it.last(); c++ {
			it.y = math.Max(it.y, s.low[c])
		}
	}
	if len(it.up) > 0 {
		s.stretch(b.col, y, it.y)
	}
	s.bars = append(s.bars, it)
	return it.y
}

// railName is the number of a rail by DIN 72552: 30 for the plus of a battery.
func (s *strip) railName(node int) string {
	for _, i := range s.Network.SourceBranches() {
		if s.Network.Branches[i].To == node {
			return "30"
		}
	}
	return ""
}

// entries are the columns in which the kids of a branching begin.
func entries(b *branching, list []int) []int {
	for _, k := range b.kids {
		if len(k.st.items) == 0 && len(k.kids) > 0 {
			list = entries(k, list)
			continue
		}
		list = append(list, k.col)
	}
	return list
}

// join draws the bar on which ways meet, and what follows it.
func (s *strip) join(b *branching, key bool) {
	it := bar{up: b.meets(), node: -1}
	if len(it.up) == 0 {
		s.place(b.after, s.low[b.col], false, key)
		return
	}
	for c := it.first(); c <= it.last(); c++ {
		it.y = math.Max(it.y, s.low[c])
	}
	it.y += below
	for _, c := range it.up {
		s.stretch(c, s.low[c], it.y)
	}
	for c := it.first(); c <= it.last(); c++ {
		s.low[c] = it.y
	}
	if next := b.after; len(next.st.items) > 0 || len(next.kids) > 0 {
		it.down = []int{next.col}
		s.lead(next.col, it.y, it.y+drop)
	}
	s.bars = append(s.bars, it)
	s.tail[b.after.col] = -1
	s.place(b.after, it.y+drop, false, key)
}

// level brings the ways of each connector into rows; it reports a change.
func (s *strip) level() bool {
	type row struct{ part, rank int }
	if s.least == nil {
		return false
	}
	deepest := map[row]float64{}
	of := make([]row, len(s.put))
	for pass := range 2 {
		rank := map[[2]int]int{} // how many ways of a connector a column has had
		for i := range s.put {
			pl := &s.put[i]
			if pl.it.branch < 0 || s.Network.Branches[pl.it.branch].Kind != circuit.ConnectorKind {
				continue
			}
			part := s.Network.Branches[pl.it.branch].Part
			if pass == 0 {
				of[i] = row{part, rank[[2]int{part, pl.col}]}
				rank[[2]int{part, pl.col}]++
				deepest[of[i]] = math.Max(deepest[of[i]], pl.y)
			}
		}
	}
	changed := false
	for i := range s.put {
		pl := &s.put[i]
		if pl.it.branch < 0 || s.Network.Branches[pl.it.branch].Kind != circuit.ConnectorKind {
			continue
		}
		if at := deepest[of[i]]; at > pl.y+0.1 {
			s.least[pl.it.branch] = at
			changed = true
		}
	}
	return changed
}
