package solve

import (
	"math"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
)

// A Short is a dead short at the far end of a wire, from there to the body.
type Short struct {
	// Wire is the part, Setting the position of the contacts that is worst.
	Wire    int
	Setting string
	// Amps is the current that flows at first through the wire.
	Amps float64
	// Fuse is the one that must open first, -1 where none need open; Also
	// lists those that may open before it has.
	Fuse int
	Also []int
	// Opens is the longest time in s until the wire is dead, infinite where it
	// stays live; Bears is how long in s the wire withstands the current.
	Opens, Bears float64
	// Survives is false where the wire burns first.
	Survives bool
}

// shorts computes a dead short at the far end of every wire that can be live,
// and keeps for each the setting that is worst for it.
func (s *Study) shorts(solver *solver) []Short {
	var worst []Short
	var wires intset.Set
	for _, set := range s.Settings {
		f := newShorted(s, solver, set)
		for i := range s.Network.Branches {
			b := &s.Network.Branches[i]
			if b.Kind != circuit.WireKind || s.Network.Of(b).Basics().Vehicle || !f.live(i) {
				continue
			}
			short := f.at(i)
			at := wires.Index(b.Part)
			switch {
			case at < 0:
				wires.Add(b.Part)
				worst = append(worst, short)
			case worst[at].Survives && (!short.Survives || short.Amps > worst[at].Amps):
				worst[at] = short
			}
		}
	}
	return worst
}

// A shorted is a network without its loads, in one setting, to be shorted.
type shorted struct {
	*Study
	set    Setting
	solver *solver
	depth  []int // from the sources through metal, -1 where not live
	ret    []bool
	body   int // where a short to the body leads
	idle   []float64
}

func newShorted(s *Study, solver *solver, set Setting) *shorted {
	f := &shorted{Study: s, set: set, solver: solver}
	metal := func(b int) bool { return !set.Open[b] && s.Network.Passes(&s.Network.Branches[b]) }
	f.depth = s.Graph.Hops(s.Network.Plus(), metal)
	f.ret = s.Graph.ReachBack(s.Network.Minus(), metal)
	f.body = s.BodyNode(set.Open)
	copy(f.solver.live, s.Network.Branches)
	for i := range s.Network.Branches {
		b := &s.Network.Branches[i]
		f.solver.live[i].Ohms = math.Max(b.Ohms, leastOhms)
		switch {
		case b.Law == circuit.Regulated: // a dead short takes its largest current
			f.solver.live[i].Law, f.solver.live[i].Ohms = circuit.VoltageSource, b.Volts/b.Amps
		case b.Kind == circuit.DiodeKind: // its drop is small beside a battery's voltage
			f.solver.live[i].Law = circuit.Resistance
		}
		f.solver.open[i] = set.Open[i] || !b.IsSource() && !s.Network.Passes(b)
	}
	f.solver.join()
	f.solver.pin()
	f.idle = f.volts()
	return f
}

// BodyNode is the node of the body on which the sources stand with these
// branches open, else the negative terminal of the first.
func (s *Study) BodyNode(open []bool) int {
	n := s.Network
	best, least := n.Supply().Node("-"), math.MaxInt
	count := s.Graph.Hops(n.Minus(), func(b int) bool { return !open[b] && s.Graph.Metal(b) })
	for i := range n.Parts {
		ground, ok := n.Parts[i].(*circuit.Ground)
		if !ok {
			continue
		}
		if p := ground.Node("point"); count[p] >= 0 && count[p] < least {
			best, least = p, count[p]
		}
	}
	return best
}

// live reports a wire that a source is on, and that is not a return.
func (f *shorted) live(branch int) bool {
	b := &f.Network.Branches[branch]
	return !f.set.Open[branch] && f.depth[b.From] >= 0 && f.depth[b.To] >= 0 && !f.ret[b.From] && !f.ret[b.To]
}

// far is the end of a wire that is further from the source.
func (f *shorted) far(branch int) int {
	b := &f.Network.Branches[branch]
	if f.depth[b.From] > f.depth[b.To] {
		return b.From
	}
	return b.To
}

// volts solves the unloaded network: without loads it is linear.
func (f *shorted) volts() []float64 {
	s := f.solver
	held := s.held()
	clear(s.volts)
	rhs, v := make([]float64, f.Network.Nodes), make([]float64, f.Network.Nodes)
	s.imbalance(s.volts, rhs, held, true)
	s.matrix.factor()
	s.matrix.solve(rhs, v)
	for i := range v {
		v[i] = -v[i]
	}
	return v
}

// response is the voltages for 1 A drawn at a node and put back at the body.
func (f *shorted) response(node int) []float64 {
	rhs, z := make([]float64, f.Network.Nodes), make([]float64, f.Network.Nodes)
	rhs[node]++
	rhs[f.body]--
	for i := range rhs {
		if f.solver.pinned[i] {
			rhs[i] = 0
		}
	}
	f.solver.matrix.solve(rhs, z)
	return z
}

// at shorts the far end of a wire and follows what happens: the fuse with the
// shortest of the longest opening times opens, and so on while the place
// stays live by another way.
func (f *shorted) at(wire int) Short {
	n := f.Network
	w := n.Of(&n.Branches[wire]).(*circuit.Wire)
	out := Short{Wire: n.Branches[wire].Part, Setting: f.set.Name, Fuse: -1, Survives: true}
	node, idle := f.far(wire), f.idle
	energy, bears := 0.0, w.Withstands()
	var opened []int
	for {
		z := f.response(node)
		amps := (idle[node] - idle[f.body]) / (z[node] - z[f.body] + leastOhms)
		through := func(b int) float64 {
			br := &n.Branches[b]
			v := idle[br.From] - idle[br.To] - amps*(z[br.From]-z[br.To])
			return v / f.solver.live[b].Ohms
		}
		inWire := math.Abs(through(wire))
		if len(opened) == 0 {
			out.Amps, out.Bears = inWire, bears/(inWire*inWire)
		}
		fuse, takes := f.firstToOpen(through)
		if fuse < 0 {
			out.Opens = math.Inf(1)
			out.Survives = out.Survives && !over(inWire, n.Ampacity(w))
			break
		}
		if out.Fuse < 0 {
			out.Fuse, out.Also = n.Branches[fuse].Part, f.mayOpen(fuse, takes, through)
		}
		out.Opens += takes
		energy += inWire * inWire * takes
		out.Survives = out.Survives && (energy <= bears || takes > 5 && !over(inWire, 1.45*n.Ampacity(w)))
		opened = intset.Append(opened, fuse)
		f.solver.open[fuse] = true
		if !f.fed(node) {
			break
		}
		idle = f.volts()
	}
	for _, b := range opened {
		f.solver.open[b] = false
	}
	if len(opened) > 1 || len(opened) == 1 && math.IsInf(out.Opens, 1) {
		f.volts() // the matrix holds the whole network again
	}
	return out
}

// leastOhms is the resistance of the short itself and the least of everything
// on its way, so that a source of no resistance gives a current that is finite.
const leastOhms = 1e-6

// over reports whether v is above limit by more than rounding.
func over(v, limit float64) bool { return v > limit*(1+1e-9) }

// fed reports whether a source still feeds a node through metal.
func (f *shorted) fed(node int) bool {
	return f.Graph.Reach(f.Network.Plus(), func(b int) bool { return !f.solver.open[b] && f.Network.Passes(&f.Network.Branches[b]) })[node]
}

// firstToOpen is the fuse that must open soonest, and when; -1 for none.
func (f *shorted) firstToOpen(through func(int) float64) (int, float64) {
	best, soonest := -1, math.Inf(1)
	for i := range f.Network.Branches {
		b := &f.Network.Branches[i]
		if b.IsFuse() && !f.solver.open[i] {
			if t := f.Network.Of(b).(*circuit.Fuse).SlowestOpening(through(i)); t < soonest {
				best, soonest = i, t
			}
		}
	}
	return best, soonest
}

// mayOpen lists the other fuses that may open before one of them has to.
func (f *shorted) mayOpen(fuse int, takes float64, through func(int) float64) []int {
	var list []int
	for i := range f.Network.Branches {
		b := &f.Network.Branches[i]
		if b.IsFuse() && i != fuse && !f.solver.open[i] && f.Network.Of(b).(*circuit.Fuse).FastestOpening(through(i)) < takes {
			list = intset.Append(list, b.Part)
		}
	}
	return list
}
