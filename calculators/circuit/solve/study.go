package solve

import (
	"math"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
)

// A Study is everything that is computed of a network: its solution in every
// state, what a short does to every wire, and what each fuse leaves live.
// Nothing changes it, so goroutines may share it.
type Study struct {
	Network   *circuit.Network
	Graph     *Graph
	Solutions []*Solution // one for each state
	// Unusable says of each state whether its currents mean nothing: metal
	// joins a source's terminals, or there is no solution.
	Unusable []bool
	// Settings are the named states, then the positions of the contacts that
	// nobody named and that happen all the same.
	Settings []Setting
	Shorts   []Short
	Blown    []Blown
	// Standby is what the parked state draws and how long the battery lasts.
	Standby Standby
}

// Analyze computes everything of a network.
func Analyze(n *circuit.Network) *Study {
	s := &Study{Network: n, Graph: newGraph(n)}
	solver := newSolver(n)
	for i := range n.States {
		sol := solver.settle(i)
		for _, branch := range sol.Undervolted {
			sol.Available = append(sol.Available, solver.available(i, branch))
		}
		s.Solutions = append(s.Solutions, sol)
	}
	for i := range n.States {
		s.Unusable = append(s.Unusable, s.unusable(i))
	}
	s.Settings = s.settings()
	s.Shorts = s.shorts(solver)
	s.Blown = s.blown(solver)
	s.Standby = s.standby()
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
func (s *Study) blown(solver *solver) []Blown {
	var list []Blown
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		if !b.IsFuse() {
			continue
		}
		blown := Blown{Fuse: b.Part}
		var dead, live intset.Set
		for _, set := range s.Settings {
			pass := func(k int) bool { return !set.Open[k] && n.Passes(&n.Branches[k]) }
			before := s.Graph.Reach(n.Plus(), pass)
			after := s.Graph.Reach(n.Plus(), func(k int) bool { return k != i && pass(k) })
			for k := range n.Branches {
				if l := &n.Branches[k]; n.Draws(l) && before[l.From] && !after[l.From] && dead.Add(l.Part) {
					blown.Dead = intset.Append(blown.Dead, l.Part)
				}
			}
			if before[b.From] && after[b.From] && after[b.To] {
				s.feeders(i, b.To, set, &live, &blown)
			}
		}
		s.fallen(solver, i, &dead, &blown)
		list = append(list, blown)
	}
	return list
}

// fallen adds the loads that no longer run in a state when a fuse is pulled
// there and relays and amplifiers have followed.
func (s *Study) fallen(solver *solver, fuse int, seen *intset.Set, out *Blown) {
	const (
		nothing = 1e-9 // A; a fuse that carries no more changes nothing
		runs    = 0.1  // of its current: a load with less is off (our own limit)
	)
	n := s.Network
	defer func() { solver.without = -1 }()
	for state, before := range s.Solutions {
		if s.Unusable[state] || math.Abs(before.Flows[fuse].Current) < nothing {
			continue
		}
		solver.without = fuse
		after := solver.settleFrom(state, before.Moved)
		for k := range n.Branches {
			b := &n.Branches[k]
			was, is := math.Abs(before.Flows[k].Current), math.Abs(after.Flows[k].Current)
			off := before.Moved[b.Part] && !after.Moved[b.Part] && (b.Kind == circuit.AmplifierKind || b.Kind == circuit.ConverterKind)
			if n.Draws(b) && before.On(n, k) && was > nothing && (off || is < runs*was) && seen.Add(b.Part) {
				out.Dead = intset.Append(out.Dead, b.Part)
			}
		}
	}
}

// feeders finds the fuses through which a node stays live, without one of them.
func (s *Study) feeders(without, node int, set Setting, seen *intset.Set, out *Blown) {
	n := s.Network
	_, cut := s.Graph.MaxFuseCurrent(node, without, set.Open)
	if len(cut) == 0 {
		cut = []int{n.First(circuit.SourceKind)}
	}
	for _, e := range cut {
		if e != out.Fuse && seen.Add(e) {
			out.Live = intset.Append(out.Live, e)
		}
	}
}

// unusable reports whether a state's currents mean nothing: metal joins a
// source's terminals, or there is no solution. Rules of their own say that,
// and a fuse for such a current would be bad advice.
func (s *Study) unusable(state int) bool {
	sol := s.Solutions[state]
	if !sol.Solved() {
		return true
	}
	metal := func(k int) bool { return !sol.Flows[k].Open && s.Graph.Metal(k) }
	for _, i := range s.Network.SourceBranches() {
		b := &s.Network.Branches[i]
		if s.Graph.Reach([]int{b.To}, metal)[b.From] {
			return true
		}
	}
	return false
}

// Peak is the largest current in A through a branch in any state that is
// usable and may last, and that state.
func (s *Study) Peak(branch int) (amps float64, state int) {
	for i, sol := range s.Solutions {
		if s.Unusable[i] || s.Network.States[i].Lasts > 0 {
			continue
		}
		if a := math.Abs(sol.Flows[branch].Current); a > amps {
			amps, state = a, i
		}
	}
	return amps, state
}

// Busiest is the state in which the loads draw most.
func (s *Study) Busiest() int {
	best, most := 0, 0.0
	for i, sol := range s.Solutions {
		drawn := 0.0
		for k := range s.Network.Branches {
			if s.Network.Draws(&s.Network.Branches[k]) {
				drawn += math.Abs(sol.Flows[k].Current)
			}
		}
		if drawn > most {
			best, most = i, drawn
		}
	}
	return best
}
