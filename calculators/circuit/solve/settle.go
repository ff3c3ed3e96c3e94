package solve

import (
	"math"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
)

// turnOn is the voltage on an amplifier's switch-on lead from which it is on,
// common practice.
const turnOn = 6.0

// letsGo is the share of its pull-in voltage under which a relay lets go,
// common practice.
const letsGo = 0.4

// SwitchPositions say for each part whether it has moved by itself: a relay
// that has pulled in, an amplifier that is switched on.
type SwitchPositions []bool

// State finds the circuit at rest in one of its states. Relays follow their
// coils, and amplifiers their switch-on leads, unless the state says more.
func State(n *circuit.Network, state int) *Solution { return newSolver(n).settle(state) }

// settle moves relays and amplifiers until nothing moves any more.
func (s *solver) settle(state int) *Solution {
	n := s.n
	moved := make(SwitchPositions, len(n.Parts))
	for i := range n.Parts {
		kind := n.Parts[i].Basics().Kind
		moved[i] = kind == circuit.AmplifierKind || kind == circuit.ConverterKind
	}
	for _, f := range n.States[state].Forced {
		moved[f.Relay] = f.Energized
	}
	return s.settleFrom(state, moved)
}

// settleFrom does the same from where everything stands.
func (s *solver) settleFrom(state int, moved SwitchPositions) *Solution {
	n := s.n
	clear(s.taken)
	out := &Solution{State: state}
	for pass := 0; ; pass++ {
		out.Settled = s.balance(state, moved)
		next := s.follow(state, moved)
		changed := changes(moved, next)
		if len(changed) == 0 {
			break
		}
		if pass >= 2*len(n.Parts)+8 || pass >= 60 {
			out.Settled, out.Oscillating = false, changed
			break
		}
		moved = next
	}
	out.Moved = moved
	out.Volts = append([]float64(nil), s.volts...)
	out.Flows = s.flows()
	for i := range s.live {
		if s.starves(i) {
			out.Undervolted = intset.Append(out.Undervolted, i)
		}
	}
	return out
}

// starves reports whether a live load of constant current or power is left
// with less than half the supply.
func (s *solver) starves(branch int) bool {
	b := &s.live[branch]
	v := s.volts[b.From] - s.volts[b.To]
	return (b.Law == circuit.CurrentLoad || b.Law == circuit.PowerLoad) && !s.open[branch] && b.Role != circuit.Feeding && v > 0.02*b.Floor && v < b.Floor
}

// available is the largest share of what a load asks for that the wiring can
// give it in a state, by halving the interval; all else stays as it is.
func (s *solver) available(state, branch int) float64 {
	defer func() { s.reduced = -1 }()
	s.reduced = branch
	low, high := 0.0, 1.0
	for range 40 {
		s.share = (low + high) / 2
		if s.settle(state); s.starves(branch) {
			high = s.share
		} else {
			low = s.share
		}
	}
	return low
}

// enter sets every branch to what it is in a state.
func (s *solver) enter(state int, moved SwitchPositions) {
	st := &s.n.States[state]
	copy(s.live, s.n.Branches)
	for i := range s.live {
		b := &s.live[i]
		s.open[i] = false
		switch {
		case b.Kind == circuit.SwitchKind:
			s.open[i] = !st.IsClosed(b)
		case b.Kind == circuit.AlternatorKind:
			s.open[i] = !st.Running.Has(b.Part)
		case b.IsFuse():
			s.open[i] = st.Open.Has(b.Part)
		case b.Role == circuit.MakeContact:
			s.open[i] = !moved[b.Part]
		case b.Role == circuit.BreakContact:
			s.open[i] = moved[b.Part]
		case b.Role == circuit.Feeding && b.Kind == circuit.SourceKind && st.Parked:
			b.Amps = s.n.Of(b).(*circuit.Source).Standing
		case b.Role == circuit.Feeding && st.Parked:
			b.Amps = 0
		case b.Role == circuit.Output, b.Role == circuit.Converted: // what is off drives nothing
			s.open[i] = !moved[b.Part] || s.asleep(st, b)
		case s.n.Draws(b):
			s.demand(st, b)
			s.rest(st, b, moved)
		}
		if b.Law == circuit.CurrentLoad && b.Amps == 0 {
			s.open[i] = true
		}
	}
	if s.without >= 0 {
		s.open[s.without] = true
	}
	if s.reduced >= 0 {
		s.live[s.reduced].Amps *= s.share
		s.live[s.reduced].Watts *= s.share
	}
	s.join()
	s.pin()
}

// demand sets a load to what it draws in a state: the writer's own value for
// that state, or what a converter passes on.
func (s *solver) demand(st *circuit.State, b *circuit.Branch) {
	for _, d := range st.Draws {
		if d.Load == b.Part {
			b.Law, b.Amps, b.Watts, b.Ohms = circuit.Resistance, d.Amps, d.Watts, d.Ohms
			if d.Amps > 0 {
				b.Law = circuit.CurrentLoad
			} else if d.Watts > 0 {
				b.Law = circuit.PowerLoad
			}
		}
	}
	if b.Kind == circuit.ConverterKind {
		b.Watts = s.taken[b.Part]
	}
}

// balance finds the voltages with relays and amplifiers where they stand, and
// goes on until every converter takes from its input what its output gives.
func (s *solver) balance(state int, moved SwitchPositions) bool {
	const (
		rounds = 60
		same   = 1e-8 // of the power; what is left after a step of the search
	)
	for range rounds {
		s.enter(state, moved)
		if !s.newton() {
			return false
		}
		still := true
		for i := range s.live {
			b := &s.live[i]
			c, ok := s.n.Of(b).(*circuit.Converter)
			if !ok || b.Role != circuit.Converted {
				continue
			}
			takes := c.Idle
			if !s.open[i] {
				v := s.volts[b.From] - s.volts[b.To]
				amps, _ := flow(b, v)
				takes += math.Max(0, -v*amps) / c.Efficiency
			}
			still = still && math.Abs(takes-s.taken[b.Part]) <= same*(1+takes)
			s.taken[b.Part] = takes
		}
		if still {
			return true
		}
	}
	return false
}

// asleep reports a load that the state switches off, or that sleeps parked.
func (s *solver) asleep(st *circuit.State, b *circuit.Branch) bool {
	return st.Off.Has(b.Part) || st.Parked && circuit.DemandOf(s.n.Of(b)).Sleeps > 0
}

// rest sets a load that is off to its standby current.
func (s *solver) rest(st *circuit.State, b *circuit.Branch, moved SwitchPositions) {
	if s.asleep(st, b) || (b.Kind == circuit.AmplifierKind || b.Kind == circuit.ConverterKind) && !moved[b.Part] {
		b.Law, b.Amps = circuit.CurrentLoad, circuit.DemandOf(s.n.Of(b)).Sleeps
	}
}

// follow says where relays and amplifiers move at the voltages found.
func (s *solver) follow(state int, moved SwitchPositions) SwitchPositions {
	next := append(SwitchPositions(nil), moved...)
	rem := make([]bool, len(moved))
	for i := range s.live {
		b := &s.live[i]
		v := s.volts[b.From] - s.volts[b.To]
		switch b.Role {
		case circuit.Coil:
			if !s.n.States[state].Forces(b.Part) {
				next[b.Part] = s.pulls(b, math.Abs(v), moved[b.Part])
			}
		case circuit.SupplyInput:
			if c, ok := s.n.Of(b).(*circuit.Converter); ok {
				next[b.Part] = v >= c.Least
			}
		case circuit.RemoteInput:
			rem[b.Part] = true
			next[b.Part] = v >= turnOn
		}
	}
	for i := range s.n.Parts {
		if s.n.Parts[i].Basics().Kind == circuit.AmplifierKind && !rem[i] {
			next[i] = true
		}
	}
	return next
}

// pulls reports whether a relay is pulled in at a coil voltage: it lets go
// only well under the voltage that it pulled in at.
func (s *solver) pulls(b *circuit.Branch, v float64, in bool) bool {
	least := s.n.Of(b).(*circuit.Relay).PullIn
	if in {
		least *= letsGo
	}
	return v >= least
}

// changes lists the parts that moved.
func changes(a, b SwitchPositions) []int {
	var list []int
	for i := range a {
		if a[i] != b[i] {
			list = intset.Append(list, i)
		}
	}
	return list
}
