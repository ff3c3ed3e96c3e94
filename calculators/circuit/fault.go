package circuit

import "math"

// A Short is a dead short at the far end of a wire, from there to the body.
type Short struct {
	// Wire is the element, Setting the position of the contacts that is worst.
	Wire    int
	Setting string
	// Amps is the current that flows at first through the wire.
	Amps float64
	// Fuse is the one that must open first, -1 where none need open; Also
	// lists those that may open before it has.
	Fuse int
	Also []int
	// Opens is the longest time in s until the wire is dead, infinite where it
	// stays live; Bears is how long the wire bears the current.
	Opens, Bears float64
	// Survives is false where the wire burns first.
	Survives bool
}

// shorts computes a dead short at the far end of every wire that can be live,
// and keeps for each the setting that is worst for it.
func (s *Study) shorts() []Short {
	var worst []Short
	var wires marks
	for _, set := range s.sets {
		f := newFault(s, set)
		for i := range s.Network.Branches {
			b := &s.Network.Branches[i]
			if e := s.Network.of(b); e.Kind != Wire || e.Vehicle || !f.live(i) {
				continue
			}
			short := f.at(i)
			at := wires.place(b.Element)
			switch {
			case at < 0:
				wires.add(b.Element)
				worst = append(worst, short)
			case worst[at].Survives && (!short.Survives || short.Amps > worst[at].Amps):
				worst[at] = short
			}
		}
	}
	return worst
}

// A fault is a network without its loads, in one setting, to be shorted.
type fault struct {
	*Study
	set    setting
	solver *solver
	depth  []int // from the sources through metal, -1 where not live
	ret    []bool
	body   int // where a short to the body leads
	idle   []float64
}

func newFault(s *Study, set setting) *fault {
	f := &fault{Study: s, set: set, solver: s.solver}
	metal := func(b int) bool { return !set.open[b] && s.graph.n.passes(&s.Network.Branches[b]) }
	f.depth = s.graph.hops(s.Network.plus(), metal)
	f.ret = s.graph.reach(s.Network.minus(), metal)
	f.body = f.bodyNode()
	copy(f.solver.live, s.Network.Branches)
	for i := range s.Network.Branches {
		b := &s.Network.Branches[i]
		source := b.Law == Drives && s.Network.of(b).Kind == Source
		f.solver.open[i] = set.open[i] || !source && !s.Network.passes(b)
	}
	f.solver.pin()
	f.idle = f.volts()
	return f
}

// bodyNode is the point of the body on which the source stands, else its
// negative terminal.
func (f *fault) bodyNode() int {
	best, least := f.Network.minus()[0], math.MaxInt
	count := f.graph.hops(f.Network.minus(), func(b int) bool { return !f.set.open[b] && f.graph.metal(b) })
	for i := range f.Network.Elements {
		e := &f.Network.Elements[i]
		if e.Kind != Ground {
			continue
		}
		if p := e.node("point"); count[p] >= 0 && count[p] < least {
			best, least = p, count[p]
		}
	}
	return best
}

// live reports a wire that a source is on, and that is not a return.
func (f *fault) live(branch int) bool {
	b := &f.Network.Branches[branch]
	return !f.set.open[branch] && f.depth[b.From] >= 0 && f.depth[b.To] >= 0 && !f.ret[b.From] && !f.ret[b.To]
}

// far is the end of a wire that is further from the source.
func (f *fault) far(branch int) int {
	b := &f.Network.Branches[branch]
	if f.depth[b.From] > f.depth[b.To] {
		return b.From
	}
	return b.To
}

// volts solves the unloaded network: without loads it is linear.
func (f *fault) volts() []float64 {
	s := f.solver
	clear(s.volts)
	rhs, v := make([]float64, f.Network.Nodes), make([]float64, f.Network.Nodes)
	s.imbalance(s.volts, rhs, true)
	s.lattice.factor()
	s.lattice.solve(rhs, v)
	for i := range v {
		v[i] = -v[i]
	}
	return v
}

// response is the voltages for 1 A drawn at a node and put back at the body.
func (f *fault) response(node int) []float64 {
	rhs, z := make([]float64, f.Network.Nodes), make([]float64, f.Network.Nodes)
	rhs[node]++
	rhs[f.body]--
	for i := range rhs {
		if f.solver.pinned[i] {
			rhs[i] = 0
		}
	}
	f.solver.lattice.solve(rhs, z)
	return z
}

// at shorts the far end of a wire and follows what happens: the fuse with the
// shortest of the longest opening times opens, and so on while the place
// stays live by another way.
func (f *fault) at(wire int) Short {
	n := f.Network
	e := n.of(&n.Branches[wire])
	out := Short{Wire: n.Branches[wire].Element, Setting: f.set.name, Fuse: -1, Survives: true}
	node, idle := f.far(wire), f.idle
	energy, bears := 0.0, withstands(e)
	var opened []int
	for {
		z := f.response(node)
		amps := (idle[node] - idle[f.body]) / (z[node] - z[f.body] + leastOhms)
		through := func(b int) float64 {
			br := &n.Branches[b]
			v := idle[br.From] - idle[br.To] - amps*(z[br.From]-z[br.To])
			return v / br.Ohms
		}
		inWire := math.Abs(through(wire))
		if len(opened) == 0 {
			out.Amps, out.Bears = inWire, bears/(inWire*inWire)
		}
		fuse, takes := f.firstToOpen(through)
		if fuse < 0 {
			out.Opens = math.Inf(1)
			out.Survives = out.Survives && !over(inWire, n.Limit(e))
			break
		}
		if out.Fuse < 0 {
			out.Fuse, out.Also = n.Branches[fuse].Element, f.mayOpen(fuse, takes, through)
		}
		out.Opens += takes
		energy += inWire * inWire * takes
		out.Survives = out.Survives && (energy <= bears || takes > 5 && !over(inWire, 1.45*n.Limit(e)))
		opened = with(opened, fuse)
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
		f.volts() // the lattice holds the whole network again
	}
	return out
}

// over is a comparison that rounding does not decide.
func over(v, limit float64) bool { return v > limit*(1+1e-9) }

// fed reports whether a source still feeds a node through metal.
func (f *fault) fed(node int) bool {
	return f.graph.reach(f.Network.plus(), func(b int) bool { return !f.solver.open[b] && f.Network.passes(&f.Network.Branches[b]) })[node]
}

// firstToOpen is the fuse that must open soonest, and when; -1 for none.
func (f *fault) firstToOpen(through func(int) float64) (int, float64) {
	best, soonest := -1, math.Inf(1)
	for i := range f.Network.Branches {
		b := &f.Network.Branches[i]
		if e := f.Network.of(b); e.Kind == Fuse && b.Part == "" && !f.solver.open[i] {
			if t := SlowestOpening(e, through(i)); t < soonest {
				best, soonest = i, t
			}
		}
	}
	return best, soonest
}

// mayOpen lists the other fuses that may open before one of them has to.
func (f *fault) mayOpen(fuse int, takes float64, through func(int) float64) []int {
	var list []int
	for i := range f.Network.Branches {
		b := &f.Network.Branches[i]
		if e := f.Network.of(b); e.Kind == Fuse && b.Part == "" && i != fuse && !f.solver.open[i] && FastestOpening(e, through(i)) < takes {
			list = with(list, b.Element)
		}
	}
	return list
}
