package circuit

import "math"

// A graph says which branches meet at each node.
type graph struct {
	n  *Network
	at [][]int
}

func newGraph(n *Network) *graph {
	g := &graph{n: n, at: make([][]int, n.Nodes)}
	for i, b := range n.Branches {
		g.at[b.From] = with(g.at[b.From], i)
		if b.To != b.From {
			g.at[b.To] = with(g.at[b.To], i)
		}
	}
	return g
}

// other is the node at the other end of a branch.
func (g *graph) other(branch, node int) int {
	b := &g.n.Branches[branch]
	if b.From == node {
		return b.To
	}
	return b.From
}

// metal reports a branch of bare metal: wire, fuse, contact, joint, body.
func (g *graph) metal(branch int) bool {
	b := &g.n.Branches[branch]
	return g.n.passes(b) && g.n.of(b).Kind != Load
}

// A setting is one position of every contact: that of a named state, or one
// that the drawing must bear too. open says which branches are open in it.
type setting struct {
	name string
	// state is the named state, -1 for a setting without one.
	state int
	open  []bool
	// feed and ret mark the nodes that metal joins with a positive terminal
	// and with a negative one.
	feed, ret []bool
}

// settings are the named states, then every switch closed with the relays
// pulled in and with the relays at rest: a state that nobody named happens
// all the same.
func (s *Study) settings() []setting {
	var list []setting
	for i, sol := range s.Solutions {
		open := make([]bool, len(sol.Flows))
		for k, f := range sol.Flows {
			open[k] = f.Open
		}
		list = append(list, s.setting(s.Network.States[i].Name, i, open))
	}
	for _, at := range [...]struct{ name, open string }{{"all switches closed, relays pulled in", "break"}, {"all switches closed, relays at rest", "make"}} {
		open := make([]bool, len(s.Network.Branches))
		for k, b := range s.Network.Branches {
			open[k] = b.Part == at.open
		}
		list = append(list, s.setting(at.name, -1, open))
	}
	return list
}

// setting finds out what is fed and what returns with these branches open.
func (s *Study) setting(name string, state int, open []bool) setting {
	metal := func(k int) bool { return !open[k] && s.graph.metal(k) }
	return setting{name, state, open, s.graph.reach(s.Network.plus(), metal), s.graph.reach(s.Network.minus(), metal)}
}

// plus and minus list the terminals of the sources of the supply.
func (n *Network) plus() []int {
	var list []int
	for _, i := range n.sourceBranches() {
		list = with(list, n.Branches[i].To)
	}
	return list
}

func (n *Network) minus() []int {
	var list []int
	for _, i := range n.sourceBranches() {
		list = with(list, n.Branches[i].From)
	}
	return list
}

// reach marks the nodes that can be reached from some nodes through the
// branches that pass lets through.
func (g *graph) reach(from []int, pass func(branch int) bool) []bool {
	seen := make([]bool, g.n.Nodes)
	queue := make([]int, 0, g.n.Nodes)
	for _, node := range from {
		if !seen[node] {
			seen[node] = true
			queue = with(queue, node)
		}
	}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, b := range g.at[node] {
			next := g.other(b, node)
			if !seen[next] && pass(b) {
				seen[next] = true
				queue = with(queue, next)
			}
		}
	}
	return seen
}

// hops counts the branches from some nodes to every other, -1 for a node that
// is not reached.
func (g *graph) hops(from []int, pass func(branch int) bool) []int {
	count := make([]int, g.n.Nodes)
	for i := range count {
		count[i] = -1
	}
	var queue []int
	for _, node := range from {
		if count[node] < 0 {
			count[node] = 0
			queue = with(queue, node)
		}
	}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, b := range g.at[node] {
			if next := g.other(b, node); count[next] < 0 && pass(b) {
				count[next] = count[node] + 1
				queue = with(queue, next)
			}
		}
	}
	return count
}

// runs is the least length of added wire, in m, from a source to every node
// through metal without a fuse; infinite for a node that is not reached. The
// vehicle's own wires count nothing: a feed point of the vehicle is a source.
func (g *graph) runs(open []bool) []float64 {
	d := make([]float64, g.n.Nodes)
	for i := range d {
		d[i] = math.Inf(1)
	}
	queue := append([]int(nil), g.n.plus()...)
	for _, node := range queue {
		d[node] = 0
	}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, b := range g.at[node] {
			e := g.n.of(&g.n.Branches[b])
			if open[b] || !g.metal(b) || e.Kind == Fuse {
				continue
			}
			length := 0.0
			if e.Kind == Wire && !e.Vehicle {
				length = e.Length
			}
			if next := g.other(b, node); d[node]+length < d[next] {
				d[next] = d[node] + length
				queue = with(queue, next)
			}
		}
	}
	return d
}

// lets is the largest current in A that the fuses on the way let through to a
// node, for a wire that is left out of the way: the least cut, by augmenting
// paths. It is infinite where a way has no fuse at all, 0 where there is no
// way. The fuses of the cut come with it.
func (g *graph) lets(target, leftOut int, open []bool) (amps float64, cut []int) {
	used := make([]float64, len(g.n.Branches)) // of each fuse, from From to To
	came := make([]int, g.n.Nodes)
	for {
		for i := range came {
			came[i] = -1
		}
		queue := make([]int, 0, g.n.Nodes)
		for _, node := range g.n.plus() {
			came[node] = -2
			queue = with(queue, node)
		}
		for len(queue) > 0 && came[target] == -1 {
			node := queue[0]
			queue = queue[1:]
			for _, b := range g.at[node] {
				next := g.other(b, node)
				if came[next] == -1 && b != leftOut && !open[b] && g.metal(b) && g.room(b, node, used) > 0 {
					came[next] = b
					queue = with(queue, next)
				}
			}
		}
		if came[target] == -1 {
			return amps, g.cutBy(came, open)
		}
		least := math.Inf(1)
		for node := target; came[node] >= 0; node = g.other(came[node], node) {
			least = math.Min(least, g.room(came[node], g.other(came[node], node), used))
		}
		if math.IsInf(least, 1) {
			return least, nil
		}
		for node := target; came[node] >= 0; node = g.other(came[node], node) {
			b := came[node]
			if g.n.Branches[b].To == node {
				used[b] += least
			} else {
				used[b] -= least
			}
		}
		amps += least
	}
}

// room is what a branch still lets through from a node on.
func (g *graph) room(branch, from int, used []float64) float64 {
	b := &g.n.Branches[branch]
	e := g.n.of(b)
	if e.Kind != Fuse {
		return math.Inf(1)
	}
	if b.From == from {
		return e.Rating - used[branch]
	}
	return e.Rating + used[branch]
}

// cutBy lists the fuses between the nodes that were reached and the others.
func (g *graph) cutBy(came []int, open []bool) []int {
	var cut []int
	for i := range g.n.Branches {
		b := &g.n.Branches[i]
		if g.n.of(b).Kind == Fuse && b.Part == "" && !open[i] && (came[b.From] == -1) != (came[b.To] == -1) {
			cut = with(cut, b.Element)
		}
	}
	return cut
}
