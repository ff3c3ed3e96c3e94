package circuit

import (
	"math"

	"baybook/calculators/calc"
)

// powerLoad is the current in A from which a load is one of power, common
// practice.
const powerLoad = 1.0

// judgeSharedGround finds the wires and joints through which both a device at
// sensor level and a load of power must return.
func judgeSharedGround(s *Study, say func(Judgement)) {
	n := s.Network
	for state, sol := range s.Solutions {
		var quiet, loud []int
		for i := range n.Branches {
			b := &n.Branches[i]
			switch e := n.of(b); {
			case !n.draws(b) || sol.Flows[i].Open:
			case e.Signal:
				quiet = with(quiet, i)
			case sol.Flows[i].Current >= powerLoad:
				loud = with(loud, i)
			}
		}
		for _, q := range quiet {
			if len(loud) > 0 {
				s.sharedWith(state, q, loud, say)
			}
		}
	}
}

// sharedWith judges one quiet device against all loud loads. A part is shared
// where neither gets back without it; what the load drops in all the shared
// parts together lifts the device.
func (s *Study) sharedWith(state, quiet int, loud []int, say func(Judgement)) {
	n := s.Network
	sol := s.Solutions[state]
	first, lift := make([]int, len(n.Branches)), make([]float64, len(n.Branches))
	for _, k := range s.wayBack(sol, n.Branches[quiet].To) {
		e := n.of(&n.Branches[k])
		if e.Vehicle || e.Kind == Body || s.sourceLead(k) {
			continue
		}
		left := s.graph.reach(n.minus(), func(b int) bool { return b != k && !sol.Flows[b].Open && s.graph.metal(b) })
		if left[n.Branches[quiet].To] {
			continue
		}
		for _, l := range loud {
			if !left[n.Branches[l].To] {
				if lift[l] == 0 {
					first[l] = n.Branches[k].Element
				}
				lift[l] += sol.Flows[l].Current * n.Branches[k].Ohms
			}
		}
	}
	for _, l := range loud {
		if lift[l] == 0 {
			continue
		}
		q, p := n.of(&n.Branches[quiet]), n.of(&n.Branches[l])
		say(Judgement{Verdict: calc.Stop, Element: first[l], State: n.States[state].Name,
			Message: q.Name + " returns through " + n.Elements[first[l]].Name + " together with " + p.Name + ", whose " + amps(sol.Flows[l].Current) + " lifts its ground by " + volts(lift[l]),
			Do:      "give " + q.Name + " a ground wire of its own to the point"})
	}
}

// wayBack lists the branches of a shortest way from a node to a source.
func (s *Study) wayBack(sol *Solution, node int) []int {
	pass := func(k int) bool { return !sol.Flows[k].Open && s.graph.metal(k) }
	depth := s.graph.hops(s.Network.minus(), pass)
	var way []int
	for depth[node] > 0 {
		for _, k := range s.graph.at[node] {
			if next := s.graph.other(k, node); pass(k) && depth[next] == depth[node]-1 {
				way = with(way, k)
				node = next
				break
			}
		}
	}
	return way
}

// sourceLead reports the source's own ground: a wire from its negative
// terminal to a ground, and that ground. Everything returns through it.
func (s *Study) sourceLead(branch int) bool {
	n := s.Network
	b := &n.Branches[branch]
	var lugs marks
	for i := range n.Elements {
		if e := &n.Elements[i]; e.Kind == Ground {
			lugs.add(e.node("lug"))
		}
	}
	lead := func(w *Branch) bool {
		for _, m := range n.minus() {
			if w.From == m && lugs.has(w.To) || w.To == m && lugs.has(w.From) {
				return true
			}
		}
		return false
	}
	switch n.of(b).Kind {
	case Wire:
		return lead(b)
	case Ground:
		for i := range n.Branches {
			if w := &n.Branches[i]; n.of(w).Kind == Wire && (w.From == b.From || w.To == b.From) && lead(w) {
				return true
			}
		}
	}
	return false
}

// judgeSpeakers judges the load on each output and the power in each speaker.
func judgeSpeakers(s *Study, say func(Judgement)) {
	for _, sol := range s.Solutions {
		s.judgeOutputs(sol, say)
	}
}

func (s *Study) judgeOutputs(sol *Solution, say func(Judgement)) {
	n := s.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		e := n.of(b)
		f := sol.Flows[i]
		switch {
		case e.Kind == Amplifier && b.Law == Drives && f.Current > 1e-9:
			sees := math.Abs(f.Drop / f.Current)
			if calc.Under(sees, e.LeastLoad) {
				say(Judgement{Verdict: calc.Stop, Element: b.Element,
					Message: b.Part + " of " + e.Name + " sees " + ohms(sees) + " and bears no less than " + ohms(e.LeastLoad),
					Do:      "connect the speakers in series, or take speakers of more ohms"})
			}
		case e.Kind == Speaker && e.Power > 0 && calc.Over(f.Heat, e.Power):
			say(Judgement{Verdict: calc.Check, Element: b.Element,
				Message: e.Name + " is given " + watts(f.Heat) + " at the output's full power and bears " + watts(e.Power),
				Do:      "set the gain lower, or take a speaker that bears more"})
		}
	}
}

// judgeSpeakerGround finds outputs that metal joins to the supply.
func judgeSpeakerGround(s *Study, say func(Judgement)) {
	n := s.Network
	supply := s.graph.reach(append(n.plus(), n.minus()...), s.graph.metal)
	for i := range n.Branches {
		b := &n.Branches[i]
		if e := n.of(b); e.Kind == Amplifier && b.Law == Drives && (supply[b.From] || supply[b.To]) {
			say(Judgement{Verdict: calc.Stop, Element: b.Element, Message: b.Part + " of " + e.Name + " is joined to the ground or the supply",
				Do: "lead both wires of the speaker back to the output, and nowhere else"})
		}
	}
}
