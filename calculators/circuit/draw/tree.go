package draw

import (
	"math"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/solve"
)

// A drawing of a circuit reads from the feed at the top to the grounds at the
// bottom. The network is made into layout nodes for that: rows of symbols one
// under the other. A layout node ends in a ground, or divides into others;
// layout nodes that meet again meet below. What belongs to one part but not to
// one way, such as a relay's coil and its contact, is drawn in two places under
// one name, as wiring diagrams have it.

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

// An item is one symbol of a layout node.
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

// A layoutNode is a row of items, then layout nodes that hang from the node at its end, or
// nothing. Where the kids have all met again, what follows stands in after.
type layoutNode struct {
	items []item
	kids  []*layoutNode
	after *layoutNode
	// bare is true where no line joins the kids at the top: they are roots.
	bare bool
	// exit is the node on which the layoutNode ends to meet others there, -1 for
	// none; ends counts the ways that lead to it.
	exit, ends int
	// known are its arrangements, each for a width.
	known []*box
}

// add puts an item at the foot of a layout node.
func (s *layoutNode) add(it item) { s.items = append(s.items, it) }

// A layouter makes the layout nodes of a network.
type layouter struct {
	*judge.Assessment
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

func newLayouter(a *judge.Assessment) *layouter {
	n := a.Network
	p := &layouter{Assessment: a, into: make([]int, n.Nodes), used: make([]bool, len(n.Branches)), visited: make([]bool, n.Nodes),
		ground: make([]bool, n.Nodes), minus: make([]bool, n.Nodes), pluses: make([]bool, n.Nodes), outlet: make([]bool, n.Nodes), joint: make([]int, n.Nodes), lug: make([]int, n.Nodes), linked: make([][]int, len(n.Parts))}
	for i := range p.joint {
		p.joint[i], p.lug[i] = -1, -1
	}
	for i := range n.Parts {
		switch e := n.Parts[i].(type) {
		case *circuit.Splice:
			if p.joint[e.Pins[0].Node] < 0 {
				p.joint[e.Pins[0].Node] = i
			}
		case *circuit.Ground:
			p.ground[e.Node("point")] = true
		case *circuit.Link:
			for _, end := range [...]string{e.From, e.To} {
				at := max(n.Index(end), 0)
				p.linked[at] = intset.Append(p.linked[at], i)
			}
		}
	}
	for i := range n.Branches {
		b := &n.Branches[i]
		switch {
		case b.Pushes():
			p.pluses[b.To], p.minus[b.From] = true, true
			p.outlet[b.From] = b.Role != circuit.Through
		case b.Kind == circuit.BodyKind, b.Role == circuit.CoilDamping, b.Role == circuit.Feeding && b.Kind == circuit.SourceKind:
			p.used[i] = true // said elsewhere
		case b.Kind == circuit.GroundKind:
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

// part is the part of a branch.
func (p *layouter) part(branch int) circuit.Part { return p.Network.Of(&p.Network.Branches[branch]) }

// levels makes up potentials that fall from the feeds to the grounds along
// every way that current could take, whatever the states: positive terminals
// are held high, points of the body low, and a source between them is a load
// like any other.
func (p *layouter) levels() []float64 {
	low := append([]bool(nil), p.ground...)
	if p.Network.First(circuit.GroundKind) < 0 {
		low = p.minus
	}
	const high = 10.0
	fixed := make([]float64, p.Network.Nodes)
	for node := range fixed {
		switch {
		case p.pluses[node]:
			fixed[node] = high
		case !low[node] && !p.outlet[node]:
			fixed[node] = math.NaN()
		}
	}
	return solve.Potentials(p.Network, func(branch int) float64 {
		b := &p.Network.Branches[branch]
		switch {
		case b.Pushes() && !math.IsNaN(fixed[b.From]):
			return 0
		case p.Network.Passes(b):
			return 1
		}
		return 1e-3
	}, fixed)
}

// sorted numbers the nodes from the highest potential to the lowest; nodes of
// the same potential by how far they are from a source.
func (p *layouter) sorted() []int {
	level := p.levels()
	var top []int
	for node, plus := range p.pluses {
		if plus {
			top = intset.Append(top, node)
		}
	}
	depth := p.Graph.Hops(top, func(int) bool { return true })
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

// down reports whether a branch is drawn and leads down from a node.
func (p *layouter) down(branch, node int) bool {
	next := p.Graph.Other(branch, node)
	return !p.used[branch] && next != node && p.order[next] > p.order[node] && !p.pluses[next]
}

// countInto counts the ways that lead down into each node from what is
// reached from the sources.
func (p *layouter) countInto() {
	nodes := make([]int, len(p.order))
	for node, at := range p.order {
		nodes[at] = node
	}
	seen := append([]bool(nil), p.pluses...)
	for _, node := range nodes {
		if !seen[node] || p.lug[node] >= 0 {
			continue
		}
		for _, b := range p.Graph.At[node] {
			if !p.down(b, node) || p.inner(b) {
				continue
			}
			next := p.Graph.Other(b, node)
			p.into[next]++
			seen[next] = true
		}
	}
}

// inner reports whether a branch ends within its own part as far as the
// drawing goes: a switch-on lead, what a slot feeds already.
func (p *layouter) inner(b int) bool {
	role := p.Network.Branches[b].Role
	return role == circuit.RemoteInput || role == circuit.Feeding
}
