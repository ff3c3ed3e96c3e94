package circuit

import "math"

// A Study is everything that can be said about a network: its solution in
// every state, what a short does to every wire, what each fuse leaves live,
// and how all that is judged.
type Study struct {
	Network   *Network
	Solutions []*Solution // one for each state
	Shorts    []Short
	Blown     []Blown
	// Standby is what the parked state draws and how long the battery lasts.
	Standby    Standby
	Judgements []Judgement

	graph    *graph
	sets     []setting
	solver   *solver
	sickness []bool // of each state
}

// Analyse solves and judges a network.
func Analyse(n *Network) *Study {
	s := &Study{Network: n, graph: newGraph(n), solver: newSolver(n)}
	for i := range n.States {
		s.Solutions = append(s.Solutions, s.solver.settle(i))
	}
	for i := range n.States {
		s.sickness = append(s.sickness, s.sick(i))
	}
	s.sets = s.settings()
	s.Shorts = s.shorts()
	s.Blown = s.blown()
	s.Standby = s.standby()
	s.judge()
	return s
}

// A Blown says what a fuse leaves when it is open or pulled.
type Blown struct {
	Fuse int
	// Dead lists the loads that lose their supply or fall still with a relay or
	// a switch-on lead, Live the other feeds, by name of fuse or source, that
	// keep its load side live.
	Dead []int
	Live []int
}

// blown looks behind every fuse: with every switch closed, and in every state
// with what falls still there, a relay whose coil or an amplifier whose
// switch-on lead the fuse feeds.
func (s *Study) blown() []Blown {
	var list []Blown
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		if n.of(b).Kind != Fuse || b.Part != "" {
			continue
		}
		blown := Blown{Fuse: b.Element}
		var dead, live marks
		for _, set := range s.sets {
			pass := func(k int) bool { return !set.open[k] && n.passes(&n.Branches[k]) }
			before := s.graph.reach(n.plus(), pass)
			after := s.graph.reach(n.plus(), func(k int) bool { return k != i && pass(k) })
			for k := range n.Branches {
				if l := &n.Branches[k]; n.supplied(l) && before[l.From] && !after[l.From] && dead.add(l.Element) {
					blown.Dead = with(blown.Dead, l.Element)
				}
			}
			if before[b.From] && after[b.From] && after[b.To] {
				s.feeders(i, b.To, set, &live, &blown)
			}
		}
		s.fallen(i, &dead, &blown)
		list = append(list, blown)
	}
	return list
}

// supplied reports the branch by which a load gets its supply.
func (n *Network) supplied(b *Branch) bool {
	return n.of(b).isLoad() && b.Law != Drives && b.Part != "rem"
}

// fallen adds the loads that no longer run in a state when a fuse is pulled
// there, and everything that moves by itself has followed.
func (s *Study) fallen(fuse int, seen *marks, out *Blown) {
	const (
		nothing = 1e-9 // A; a fuse that carries no more changes nothing
		runs    = 0.1  // of its current: a load with less is off (our own limit)
	)
	n := s.Network
	defer func() { s.solver.without = -1 }()
	for state, before := range s.Solutions {
		if s.sickness[state] || math.Abs(before.Flows[fuse].Current) < nothing {
			continue
		}
		s.solver.without = fuse
		after := s.solver.settleFrom(state, before.moved)
		for k := range n.Branches {
			b := &n.Branches[k]
			was, is := math.Abs(before.Flows[k].Current), math.Abs(after.Flows[k].Current)
			off := before.moved[b.Element] && !after.moved[b.Element] && n.of(b).Kind == Amplifier
			if n.supplied(b) && before.On(n, k) && was > nothing && (off || is < runs*was) && seen.add(b.Element) {
				out.Dead = with(out.Dead, b.Element)
			}
		}
	}
}

// feeders finds the fuses through which a node stays live, without one of them.
func (s *Study) feeders(without, node int, set setting, seen *marks, out *Blown) {
	n := s.Network
	_, cut := s.graph.lets(node, without, set.open)
	if len(cut) == 0 {
		cut = []int{n.first(Source)}
	}
	for _, e := range cut {
		if e != out.Fuse && seen.add(e) {
			out.Live = with(out.Live, e)
		}
	}
}

// sick reports a state whose currents mean nothing: metal joins a source's
// terminals, or there is no solution. That is said by itself, and a fuse for
// such a current would be bad advice.
func (s *Study) sick(state int) bool {
	sol := s.Solutions[state]
	if !sol.Settled || len(sol.Starved) > 0 {
		return true
	}
	metal := func(k int) bool { return !sol.Flows[k].Open && s.graph.metal(k) }
	for _, i := range s.Network.sourceBranches() {
		b := &s.Network.Branches[i]
		if s.graph.reach([]int{b.To}, metal)[b.From] {
			return true
		}
	}
	return false
}

// most is the largest current in A through a branch in any state that is not
// sick.
func (s *Study) most(branch int) (amps float64, state int) {
	for i, sol := range s.Solutions {
		if s.sickness[i] {
			continue
		}
		if a := math.Abs(sol.Flows[branch].Current); a > amps {
			amps, state = a, i
		}
	}
	return amps, state
}
