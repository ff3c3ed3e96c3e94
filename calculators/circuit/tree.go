package circuit

import (
	"math"

	"baybook/calculators/calc"
)

// A drawing of a circuit reads from the feed at the top to the grounds at the
// bottom. The network is made into stems for that: rows of symbols one under
// the other. A stem ends in a ground, or divides into others; stems that meet
// again meet below. What belongs to one part but not to one way, such as a
// relay's coil and its contact, is drawn in two places under one name, as
// wiring diagrams have it.

// An itemKind is what a symbol stands for.
type itemKind uint8

const (
	branchItem itemKind = iota // a branch of the network
	jointItem                  // a splice, lettered
	railItem                   // the name of a source's terminal, at the top
	flagItem                   // a mark: this way goes on at that node
	minusItem                  // a mark: this way ends on a source's negative terminal
	linkItem                   // a cable that is not solved
)

// An item is one symbol of a stem.
type item struct {
	kind   itemKind
	branch int
	// flip is true where the branch's To is at the top.
	flip bool
	// node is the node of a joint, a rail or a mark.
	node int
	text string
	// reach is how far it reaches, once it is measured.
	reach    extent
	measured bool
}

// A stem is a row of items, then stems that hang from the node at its end, or
// nothing. Where the kids have all met again, what follows stands in after.
type stem struct {
	items []item
	kids  []*stem
	after *stem
	// bare is true where no line joins the kids at the top: they are roots.
	bare bool
	// exit is the node on which the stem ends to meet others there, -1 for
	// none; ends counts the ways that lead to it.
	exit, ends int
	// known are its arrangements, each for a width.
	known []*box
}

// add puts an item at the foot of a stem.
func (s *stem) add(it item) { s.items = append(s.items, it) }

// A planter makes the stems of a network.
type planter struct {
	*Study
	order   []int   // of each node: what comes first is drawn higher
	into    []int   // ways that lead down into each node
	used    []bool  // of each branch
	visited []bool  // of each node
	ground  []bool  // points of the body: where a way ends
	minus   []bool  // negative terminals of sources
	pluses  []bool  // positive ones, outputs among them
	outlet  []bool  // negative terminals of outputs
	joint   []int   // a node's splice, -1
	lug     []int   // the branch of a node's ground, -1
	linked  [][]int // the cables at each part
}

func newPlanter(s *Study) *planter {
	n := s.Network
	p := &planter{Study: s, into: make([]int, n.Nodes), used: make([]bool, len(n.Branches)), visited: make([]bool, n.Nodes),
		ground: make([]bool, n.Nodes), minus: make([]bool, n.Nodes), pluses: make([]bool, n.Nodes), outlet: make([]bool, n.Nodes), joint: make([]int, n.Nodes), lug: make([]int, n.Nodes), linked: make([][]int, len(n.Elements))}
	for i := range p.joint {
		p.joint[i], p.lug[i] = -1, -1
	}
	for i := range n.Elements {
		switch e := &n.Elements[i]; e.Kind {
		case Splice:
			if p.joint[e.Pins[0].Node] < 0 {
				p.joint[e.Pins[0].Node] = i
			}
		case Ground:
			p.ground[e.node("point")] = true
		case Link:
			for _, end := range [...]string{e.From, e.To} {
				at := max(n.named(end), 0)
				p.linked[at] = with(p.linked[at], i)
			}
		}
	}
	for i := range n.Branches {
		b := &n.Branches[i]
		switch {
		case b.Law == Drives:
			p.pluses[b.To], p.minus[b.From] = true, true
			p.outlet[b.From] = b.Part != ""
		case p.n(i).Kind == Body, b.Part == "damping", b.Part == "feeds" && p.n(i).Kind == Source:
			p.used[i] = true // said elsewhere
		case p.n(i).Kind == Ground:
			p.used[i] = true // drawn at the end of every way that leads to it
			if p.lug[b.From] < 0 {
				p.lug[b.From] = i
			}
		}
	}
	p.order = p.sorted()
	p.countInto()
	return p
}

// n is the part of a branch.
func (p *planter) n(branch int) *Element { return p.Network.of(&p.Network.Branches[branch]) }

// levels makes up potentials that fall from the feeds to the grounds along
// every way that current could take, whatever the states: positive terminals
// are held high, points of the body low, and a source between them is a load
// like any other.
func (p *planter) levels() []float64 {
	v := p.solver
	low := append([]bool(nil), p.ground...)
	if p.Network.first(Ground) < 0 {
		low = p.minus
	}
	const high = 10.0
	v.lattice.clear()
	rhs := make([]float64, p.Network.Nodes)
	held := func(node int) bool { return p.pluses[node] || low[node] || p.outlet[node] }
	diagonal := func(node int, g float64) { v.lattice.values[v.lattice.place[node]] += g }
	for i := range p.Network.Branches {
		b := &p.Network.Branches[i]
		if b.From == b.To || b.Law == Drives && held(b.From) {
			continue
		}
		g := 1e-3
		if p.Network.passes(b) {
			g = 1
		}
		for _, way := range [...][2]int{{b.From, b.To}, {b.To, b.From}} {
			diagonal(way[0], g)
			if p.pluses[way[1]] && !held(way[0]) {
				rhs[way[0]] += g * high
			}
		}
		if !held(b.From) && !held(b.To) {
			v.lattice.values[v.between[i]] -= g
		}
	}
	for node := range rhs {
		if held(node) {
			v.lattice.values[v.lattice.place[node]] = 1
			if p.pluses[node] {
				rhs[node] = high
			}
		}
	}
	v.lattice.factor()
	v.lattice.solve(rhs, rhs)
	return rhs
}

// sorted numbers the nodes from the highest potential to the lowest; nodes of
// the same potential by how far they are from a source.
func (p *planter) sorted() []int {
	level := p.levels()
	var top []int
	for node, plus := range p.pluses {
		if plus {
			top = with(top, node)
		}
	}
	depth := p.graph.hops(top, func(int) bool { return true })
	for i := range level {
		level[i] = math.Round(level[i] * 1e7)
	}
	nodes := calc.Sorted(len(level), func(a, b int) bool {
		return level[a] > level[b] || level[a] == level[b] && depth[a] < depth[b]
	})
	order := make([]int, len(nodes))
	for i, node := range nodes {
		order[node] = i
	}
	return order
}

// down reports a branch that is drawn and leads down from a node.
func (p *planter) down(branch, node int) bool {
	next := p.graph.other(branch, node)
	return !p.used[branch] && next != node && p.order[next] > p.order[node] && !p.pluses[next]
}

// countInto counts the ways that lead down into each node from what is
// reached from the sources.
func (p *planter) countInto() {
	nodes := make([]int, len(p.order))
	for node, at := range p.order {
		nodes[at] = node
	}
	seen := append([]bool(nil), p.pluses...)
	for _, node := range nodes {
		if !seen[node] || p.lug[node] >= 0 {
			continue
		}
		for _, b := range p.graph.at[node] {
			if !p.down(b, node) || p.inner(b) {
				continue
			}
			next := p.graph.other(b, node)
			p.into[next]++
			seen[next] = true
		}
	}
}

// inner reports a branch that ends within its own part as far as the drawing
// goes: a switch-on lead, what a slot feeds already.
func (p *planter) inner(b int) bool {
	part := p.Network.Branches[b].Part
	return part == "rem" || part == "feeds"
}
