package circuit

import "math"

// turnOn is the voltage on an amplifier's switch-on lead from which it is on,
// common practice.
const turnOn = 6.0

// holds is the share of its pull-in voltage under which a relay lets go,
// common practice.
const holds = 0.4

// An armature is the position of everything that moves by itself: relays that
// have pulled in, amplifiers that are switched on, by part.
type armature []bool

// Solve finds the circuit at rest in one of its states. Relays follow their
// coils, and amplifiers their switch-on leads, unless the state says more.
func (n *Network) Solve(state int) *Solution { return newSolver(n).settle(state) }

// settle moves relays and amplifiers until nothing moves any more.
func (s *solver) settle(state int) *Solution {
	n := s.n
	moved := make(armature, len(n.Elements))
	for i := range n.Elements {
		moved[i] = n.Elements[i].Kind == Amplifier
	}
	for _, h := range n.States[state].forced {
		moved[h.element] = h.pulled
	}
	return s.settleFrom(state, moved)
}

// settleFrom does the same from where everything stands.
func (s *solver) settleFrom(state int, moved armature) *Solution {
	n := s.n
	out := &Solution{State: state}
	for pass := 0; ; pass++ {
		s.enter(state, moved)
		out.Settled = s.newton()
		next := s.follow(state, moved)
		changed := changes(moved, next)
		if len(changed) == 0 {
			break
		}
		if pass >= 2*len(n.Elements)+8 || pass >= 60 {
			out.Settled, out.Restless = false, changed
			break
		}
		moved = next
	}
	out.moved = moved
	out.Volts = append([]float64(nil), s.volts...)
	out.Flows = s.flows()
	out.Energised = make([]bool, len(n.Elements))
	for i := range n.Elements {
		out.Energised[i] = n.Elements[i].Kind == Relay && moved[i]
	}
	for i := range s.live {
		b := &s.live[i]
		v := out.Flows[i].Drop
		if (b.Law == Takes || b.Law == Converts) && !s.open[i] && b.Part != "feeds" && v > 0.01*n.supply() && v < s.floor {
			out.Starved = with(out.Starved, i)
		}
	}
	return out
}

// enter sets every branch to what it is in a state.
func (s *solver) enter(state int, moved armature) {
	st := &s.n.States[state]
	copy(s.live, s.n.Branches)
	for i := range s.live {
		b := &s.live[i]
		e := s.n.of(b)
		s.open[i] = false
		switch {
		case e.Kind == Switch:
			s.open[i] = !st.closed.has(b.Element)
		case b.Part == "make":
			s.open[i] = !moved[b.Element]
		case b.Part == "break":
			s.open[i] = moved[b.Element]
		case b.Part == "feeds" && e.Kind == Source && st.Parked:
			b.Amps = e.Standing
		case b.Part == "feeds" && st.Parked:
			b.Amps = 0
		case e.Kind == Amplifier && b.Law == Drives: // an amplifier that is off drives nothing
			s.open[i] = !moved[b.Element] || st.off.has(b.Element) || st.Parked && e.Sleeps > 0
		case e.isLoad() && b.Part != "rem":
			s.rest(st, b, e, moved)
		}
		if b.Law == Takes && b.Amps == 0 {
			s.open[i] = true
		}
	}
	if s.without >= 0 {
		s.open[s.without] = true
	}
	s.pin()
}

// rest makes of a load that is off or asleep what it draws then.
func (s *solver) rest(st *State, b *Branch, e *Element, moved armature) {
	off := st.off.has(b.Element) || e.Kind == Amplifier && !moved[b.Element]
	if off || st.Parked && e.Sleeps > 0 {
		b.Law, b.Amps = Takes, e.Sleeps
	}
}

// follow says where relays and amplifiers move at the voltages found.
func (s *solver) follow(state int, moved armature) armature {
	next := append(armature(nil), moved...)
	rem := make([]bool, len(moved))
	for i := range s.live {
		b := &s.live[i]
		v := s.volts[b.From] - s.volts[b.To]
		switch b.Part {
		case "coil":
			if !s.n.States[state].holds(b.Element) {
				next[b.Element] = s.pulls(b, math.Abs(v), moved[b.Element])
			}
		case "rem":
			rem[b.Element] = true
			next[b.Element] = v >= turnOn
		}
	}
	for i := range s.n.Elements {
		if s.n.Elements[i].Kind == Amplifier && !rem[i] {
			next[i] = true
		}
	}
	return next
}

// holds reports a relay that the state holds.
func (st *State) holds(element int) bool {
	for _, h := range st.forced {
		if h.element == element {
			return true
		}
	}
	return false
}

// pulls reports whether a relay is pulled in at a coil voltage: it lets go
// only well under the voltage that it pulled in at.
func (s *solver) pulls(b *Branch, v float64, in bool) bool {
	least := s.n.of(b).PullIn
	if in {
		least *= holds
	}
	return v >= least
}

// changes lists the parts that moved.
func changes(a, b armature) []int {
	var list []int
	for i := range a {
		if a[i] != b[i] {
			list = with(list, i)
		}
	}
	return list
}
