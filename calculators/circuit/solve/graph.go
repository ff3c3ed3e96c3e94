package solve

import (
	"math"
	"strconv"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
)

// A Graph says which branches meet at each node. Nothing changes it.
type Graph struct {
	n *circuit.Network
	// At are the branches that meet at each node.
	At [][]int
}

func newGraph(n *circuit.Network) *Graph {
	g := &Graph{n: n, At: make([][]int, n.Nodes)}
	for i, b := range n.Branches {
		g.At[b.From] = intset.Append(g.At[b.From], i)
		if b.To != b.From {
			g.At[b.To] = intset.Append(g.At[b.To], i)
		}
	}
	return g
}

// Other is the node at the other end of a branch.
func (g *Graph) Other(branch, node int) int {
	b := &g.n.Branches[branch]
	if b.From == node {
		return b.To
	}
	return b.From
}

// Metal reports whether a branch is bare metal: wire, fuse, contact, joint,
// body.
func (g *Graph) Metal(branch int) bool { return g.n.IsMetal(&g.n.Branches[branch]) }

// allows reports whether current may enter a branch at a node: a diode lets
// it in at one end only.
func (g *Graph) allows(branch, node int) bool {
	b := &g.n.Branches[branch]
	return b.Kind != circuit.DiodeKind || b.From == node
}

// A Setting is one position of every contact: that of a named state, or one
// that the wiring must bear too. Open says which branches are open in it.
type Setting struct {
	Name string
	// State is the named state, -1 for a setting without one.
	State int
	Open  []bool
	// Feed and Return mark the nodes that metal joins with a positive terminal
	// and with a negative one.
	Feed, Return []bool
}

// settings are the named states, then every switch closed with the relays
// pulled in and with the relays at rest: a state that nobody named happens
// all the same.
func (s *Study) settings() []Setting {
	var list []Setting
	for i, sol := range s.Solutions {
		open := make([]bool, len(sol.Flows))
		for k, f := range sol.Flows {
			open[k] = f.Open
		}
		list = append(list, s.setting(s.Network.States[i].Name, i, open))
	}
	ways := 1
	for _, p := range s.Network.Parts {
		if sw, ok := p.(*circuit.Switch); ok {
			ways = max(ways, sw.Ways)
		}
	}
	for way := 1; way <= ways; way++ {
		at := ""
		if ways > 1 {
			at = " at way " + strconv.Itoa(way)
		}
		list = append(list, s.allClosed("all switches closed"+at+", relays pulled in", circuit.BreakContact, way),
			s.allClosed("all switches closed"+at+", relays at rest", circuit.MakeContact, way))
	}
	return list
}

// allClosed closes every contact but those of one role, and one way of every
// switch with several: this one, or its last.
func (s *Study) allClosed(name string, but circuit.Role, way int) Setting {
	open := make([]bool, len(s.Network.Branches))
	for k := range s.Network.Branches {
		b := &s.Network.Branches[k]
		open[k] = b.Role == but
		if sw, ok := s.Network.Of(b).(*circuit.Switch); ok && sw.Ways > 1 {
			open[k] = b.Number != min(way, sw.Ways)
		}
	}
	return s.setting(name, -1, open)
}

// setting finds out what is fed and what returns with these branches open.
func (s *Study) setting(name string, state int, open []bool) Setting {
	metal := func(k int) bool { return !open[k] && s.Graph.Metal(k) }
	return Setting{name, state, open, s.Graph.Reach(s.Network.Plus(), metal), s.Graph.ReachBack(s.Network.Minus(), metal)}
}

// Reach marks the nodes that can be reached from some nodes through the
// branches that pass lets through.
func (g *Graph) Reach(from []int, pass func(branch int) bool) []bool {
	return g.reach(from, pass, false)
}

// ReachBack marks the nodes from which some nodes can be reached.
func (g *Graph) ReachBack(to []int, pass func(branch int) bool) []bool {
	return g.reach(to, pass, true)
}

func (g *Graph) reach(from []int, pass func(branch int) bool, back bool) []bool {
	seen := make([]bool, g.n.Nodes)
	queue := make([]int, 0, g.n.Nodes)
	for _, node := range from {
		if !seen[node] {
			seen[node] = true
			queue = intset.Append(queue, node)
		}
	}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, b := range g.At[node] {
			next := g.Other(b, node)
			enters := node
			if back {
				enters = next
			}
			if !seen[next] && g.allows(b, enters) && pass(b) {
				seen[next] = true
				queue = intset.Append(queue, next)
			}
		}
	}
	return seen
}

// Hops counts the branches from some nodes to every other, -1 for a node that
// is not reached.
func (g *Graph) Hops(from []int, pass func(branch int) bool) []int {
	count := make([]int, g.n.Nodes)
	for i := range count {
		count[i] = -1
	}
	var queue []int
	for _, node := range from {
		if count[node] < 0 {
			count[node] = 0
			queue = intset.Append(queue, node)
		}
	}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, b := range g.At[node] {
			if next := g.Other(b, node); count[next] < 0 && g.allows(b, node) && pass(b) {
				count[next] = count[node] + 1
				queue = intset.Append(queue, next)
			}
		}
	}
	return count
}

// Runs is the least length of added wire, in m, from a source to every node
// through metal without a fuse; infinite for a node that is not reached. The
// vehicle's own wires count nothing: a feed point of the vehicle is a source.
func (g *Graph) Runs(open []bool) []float64 {
	d := make([]float64, g.n.Nodes)
	for i := range d {
		d[i] = math.Inf(1)
	}
	var queue []int
	for _, i := range g.n.SourceBranches() {
		if b := &g.n.Branches[i]; b.Law == circuit.VoltageSource { // the others limit themselves
			queue = intset.Append(queue, b.To)
		}
	}
	for _, node := range queue {
		d[node] = 0
	}
	for len(queue) > 0 {
		node := queue[0]
		queue = queue[1:]
		for _, b := range g.At[node] {
			if open[b] || !g.Metal(b) || !g.allows(b, node) || g.n.Branches[b].Kind == circuit.FuseKind {
				continue
			}
			length := 0.0
			if w, ok := g.n.Of(&g.n.Branches[b]).(*circuit.Wire); ok && !w.Vehicle {
				length = w.Length
			}
			if next := g.Other(b, node); d[node]+length < d[next] {
				d[next] = d[node] + length
				queue = intset.Append(queue, next)
			}
		}
	}
	return d
}

// MaxFuseCurrent is the largest current in A that the fuses let through to a
// node when one branch is left out: the minimum cut, found by augmenting
// paths (Ford and Fulkerson). It is infinite where a path has no fuse, 0 where
// there is no path. The fuses of the cut come with it.
func (g *Graph) MaxFuseCurrent(target, leftOut int, open []bool) (amps float64, cut []int) {
	return g.MaxFuseCurrentFrom(g.n.Plus(), target, leftOut, open)
}

// MaxFuseCurrentFrom does the same for the way from some nodes.
func (g *Graph) MaxFuseCurrentFrom(from []int, target, leftOut int, open []bool) (amps float64, cut []int) {
	used := make([]float64, len(g.n.Branches)) // of each fuse, from From to To
	came := make([]int, g.n.Nodes)
	for {
		for i := range came {
			came[i] = -1
		}
		queue := make([]int, 0, g.n.Nodes)
		for _, node := range from {
			came[node] = -2
			queue = intset.Append(queue, node)
		}
		for len(queue) > 0 && came[target] == -1 {
			node := queue[0]
			queue = queue[1:]
			for _, b := range g.At[node] {
				next := g.Other(b, node)
				if came[next] == -1 && b != leftOut && !open[b] && g.Metal(b) && g.allows(b, node) && g.residual(b, node, used) > 0 {
					came[next] = b
					queue = intset.Append(queue, next)
				}
			}
		}
		if came[target] == -1 {
			return amps, g.cutBy(came, open)
		}
		least := math.Inf(1)
		for node := target; came[node] >= 0; node = g.Other(came[node], node) {
			least = math.Min(least, g.residual(came[node], g.Other(came[node], node), used))
		}
		if math.IsInf(least, 1) {
			return least, nil
		}
		for node := target; came[node] >= 0; node = g.Other(came[node], node) {
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

// residual is the current in A that a branch still lets through from a node.
func (g *Graph) residual(branch, from int, used []float64) float64 {
	b := &g.n.Branches[branch]
	fuse, ok := g.n.Of(b).(*circuit.Fuse)
	switch {
	case !ok:
		return math.Inf(1)
	case b.From == from:
		return fuse.Rating - used[branch]
	}
	return fuse.Rating + used[branch]
}

// cutBy lists the fuses between the nodes that were reached and the others.
func (g *Graph) cutBy(came []int, open []bool) []int {
	var cut []int
	for i := range g.n.Branches {
		b := &g.n.Branches[i]
		if b.IsFuse() && !open[i] && (came[b.From] == -1) != (came[b.To] == -1) {
			cut = intset.Append(cut, b.Part)
		}
	}
	return cut
}
