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
	least []float64
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

// reach are the outermost columns of a bar.
func (b *bar) reach() (first, last int) {
	first = -1
	for _, c := range append(append([]int(nil), b.up...), b.down...) {
		if first < 0 || c < first {
			first = c
		}
		last = max(last, c)
	}
	return first, last
}

// newStrip lays a circuit out as one strip.
func newStrip(p *layouter, all *layoutNode, size func(*item) extent) *strip {
	s := &strip{layouter: p, size: size, least: make([]float64, len(p.Network.Branches))}
	s.tree = s.branch(all, 0)
	s.count = max(s.count, 1)
	const rounds = 8 // rows settle in two or three; a ring of them never does
	for round := range rounds {
		s.settle()
		if !s.level() {
			break
		}
		if round == rounds-1 {
			clear(s.least)
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
			b.outs = append(b.outs, k.leaves()...)
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
		last = it.node
		if it.kind == railItem && len(b.st.items) == 1 && len(b.kids) > 0 {
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
		if at := s.least[it.branch]; at > y {
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
		it.y = s.lowest(&it)
	}
	if len(it.up) > 0 {
		s.stretch(b.col, y, it.y)
	}
	s.bars = append(s.bars, it)
	return it.y
}

// lowest is how far down the columns of a bar are filled.
func (s *strip) lowest(b *bar) float64 {
	y := b.y
	for first, last := b.reach(); first <= last; first++ {
		y = math.Max(y, s.low[first])
	}
	return y
}

// railName is the number of a rail by DIN 72552: 30 for the plus of a battery.
func (s *strip) railName(node int) string {
	for _, i := range s.Network.SourceBranches() {
		b := &s.Network.Branches[i]
		if _, ok := s.Network.Of(b).(*circuit.Source); ok && b.To == node {
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
	it := bar{up: b.outs, node: b.st.meeting()}
	if len(it.up) == 0 {
		s.place(b.after, s.low[b.col], false, key)
		return
	}
	it.y = s.lowest(&it) + below
	for _, c := range it.up {
		s.stretch(c, s.low[c], it.y)
	}
	for first, last := it.reach(); first <= last; first++ {
		s.low[first] = it.y
	}
	if next := b.after; len(next.st.items) > 0 || len(next.kids) > 0 {
		it.down = []int{next.col}
		s.lead(next.col, it.y, it.y+drop)
	}
	s.bars = append(s.bars, it)
	s.tail[b.after.col] = -1
	s.place(b.after, it.y+drop, false, key)
}

// meeting is the node on which the kids of a layout node meet, -1 for none.
func (st *layoutNode) meeting() int {
	for _, k := range st.kids {
		if k.exit >= 0 {
			return k.exit
		}
	}
	return -1
}

// level brings the ways of each connector into rows: the first way of every
// track, the second and so on. It reports a change.
func (s *strip) level() bool {
	changed := false
	for i := range s.put {
		a := &s.put[i]
		if !s.isWay(a) {
			continue
		}
		deepest, rank := a.y, s.rank(i)
		for j := range s.put {
			if b := &s.put[j]; b.y > deepest && s.sameConnector(a, b) && s.rank(j) == rank {
				deepest = b.y
			}
		}
		if deepest > a.y+0.1 {
			s.least[a.it.branch] = deepest
			changed = true
		}
	}
	return changed
}

// rank counts the ways of a connector over one of them in its track.
func (s *strip) rank(at int) int {
	n := 0
	for i := range at {
		if s.put[i].col == s.put[at].col && s.sameConnector(&s.put[i], &s.put[at]) {
			n++
		}
	}
	return n
}

func (s *strip) isWay(pl *place) bool {
	return pl.it.branch >= 0 && s.Network.Branches[pl.it.branch].Kind == circuit.ConnectorKind
}

func (s *strip) sameConnector(a, b *place) bool {
	return s.isWay(a) && s.isWay(b) && s.part(a.it.branch) == s.part(b.it.branch)
}
