// Package solve finds what flows in a circuit at rest: node voltages and
// currents in every state, what a short does to each wire, what each fuse
// leaves dead, and how long a parked battery lasts. What it returns is never
// changed afterwards, so goroutines may share it.
package solve

import (
	"math"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
)

// A Solution is the circuit at rest in one state.
type Solution struct {
	State int
	// Volts are the node voltages against the negative terminal of the first
	// source; an island without a source has a zero of its own.
	Volts []float64
	// Flows are what passes through each branch of the network.
	Flows []Flow
	// Moved says for each part whether it is a relay that has pulled in or an
	// amplifier that is switched on.
	Moved SwitchPositions
	// Settled is false where no voltages satisfy every part, or where relays
	// find no rest; Oscillating are those relays.
	Settled     bool
	Oscillating []int
	// Undervolted are the branches whose load gets under half the supply:
	// there is no way to give it what it asks for.
	Undervolted []int
}

// A Flow is what passes through a branch.
type Flow struct {
	// Open is true where nothing can pass: an open contact, a load that is off.
	Open bool
	// Current from the branch's From to its To, in A; Drop in V the same way;
	// Heat is the power that is turned into heat or used, in W.
	Current, Drop, Heat float64
}

// On reports whether a load's branch has supply.
func (s *Solution) On(n *circuit.Network, branch int) bool {
	return s.Flows[branch].Drop > 0.01*n.Supply().Volts
}

// Energized reports whether a part is a relay that has pulled in.
func (s *Solution) Energized(n *circuit.Network, part int) bool {
	return s.Moved[part] && n.Parts[part].Basics().Kind == circuit.RelayKind
}

// A solver holds what solving a network again and again shares. One goroutine
// may use it at a time.
type solver struct {
	n       *circuit.Network
	matrix  *SparseLDL
	between []int // place of each branch's element in the matrix, -1 inside one node
	floor   float64
	// For one state: what each branch is, whether it is open, the nodes whose
	// voltage is zero by definition.
	live   []circuit.Branch
	open   []bool
	pinned []bool
	volts  []float64
	// without is a branch that is taken out, -1 where none is.
	without int
}

func newSolver(n *circuit.Network) *solver {
	s := &solver{n: n, without: -1, floor: n.Supply().Volts / 2,
		live: make([]circuit.Branch, len(n.Branches)), open: make([]bool, len(n.Branches)), pinned: make([]bool, n.Nodes), volts: make([]float64, n.Nodes)}
	s.matrix, s.between = newMatrix(n)
	return s
}

// newMatrix makes the matrix of a network, and says where in it the element
// of each branch stands.
func newMatrix(n *circuit.Network) (m *SparseLDL, between []int) {
	pairs := make([][2]int, len(n.Branches))
	for i, b := range n.Branches {
		pairs[i] = [2]int{b.From, b.To}
	}
	m = newSparseLDL(n.Nodes, pairs)
	for _, b := range n.Branches {
		at := -1
		if b.From != b.To {
			at = m.between(b.From, b.To)
		}
		between = intset.Append(between, at)
	}
	return m, between
}

// leak is the conductance in S of LEDs below their forward voltage.
const leak = 1e-9

// flow is the current in A through a branch at a voltage, and how it changes with
// the voltage. Loads of constant current or power are resistances under
// floor, half the supply: no device works there, and a load of constant power
// that is left with less has no solution at all (Thevenin's source gives the
// most power at half its voltage).
func flow(b *circuit.Branch, v, floor float64) (amps, siemens float64) {
	switch b.Law {
	case circuit.Resistance:
		return v / b.Ohms, 1 / b.Ohms
	case circuit.VoltageSource:
		return (v + b.Volts) / b.Ohms, 1 / b.Ohms
	case circuit.CurrentLoad:
		if v >= floor {
			return b.Amps, 0
		}
		return b.Amps * v / floor, b.Amps / floor
	case circuit.PowerLoad:
		if v >= floor {
			return b.Watts / v, -b.Watts / (v * v)
		}
		return b.Watts * v / (floor * floor), b.Watts / (floor * floor)
	}
	if v <= b.Volts {
		return leak * v, leak
	}
	return leak*v + b.Strings*(v-b.Volts)/b.Ohms, leak + b.Strings/b.Ohms
}

// pin chooses the node of zero volts in every island of conducting branches:
// the negative terminal of the first source that is in it.
func (s *solver) pin() {
	island := newForest(s.n.Nodes)
	for i := range s.live {
		if !s.open[i] {
			island.join(s.live[i].From, s.live[i].To)
		}
	}
	clear(s.pinned)
	has := make([]bool, s.n.Nodes)
	for i := range s.live {
		if b := &s.live[i]; b.Law == circuit.VoltageSource && !has[island.root(b.From)] {
			has[island.root(b.From)] = true
			s.pinned[b.From] = true
		}
	}
	for node := range s.n.Nodes {
		if r := island.root(node); !has[r] {
			has[r] = true
			s.pinned[node] = true
		}
	}
}

// newton finds the node voltages of the live branches. It reports false where
// no voltages satisfy them.
func (s *solver) newton() bool {
	clear(s.volts)
	residual, step, trial := make([]float64, s.n.Nodes), make([]float64, s.n.Nodes), make([]float64, s.n.Nodes)
	size := s.imbalance(s.volts, residual, true)
	for range 80 {
		s.matrix.factor()
		s.matrix.solve(residual, step)
		most := 0.0
		for _, d := range step {
			most = math.Max(most, math.Abs(d))
		}
		if math.IsNaN(most) || math.IsInf(most, 0) {
			return false
		}
		share := 1.0
		for range 12 {
			for i := range trial {
				trial[i] = s.volts[i] - share*step[i]
			}
			if after := s.imbalance(trial, residual, false); after <= size || share*most < 1e-9 {
				break
			}
			share /= 2
		}
		copy(s.volts, trial)
		size = s.imbalance(s.volts, residual, true)
		if share*most < 1e-9 {
			return true
		}
	}
	return false
}

// imbalance sums the currents that leave each node, and says how large the
// largest is. With fill it puts the conductances into the matrix too.
func (s *solver) imbalance(volts, residual []float64, fill bool) float64 {
	clear(residual)
	if fill {
		s.matrix.clear()
	}
	for i := range s.live {
		b := &s.live[i]
		if s.open[i] || b.From == b.To {
			continue
		}
		amps, siemens := flow(b, volts[b.From]-volts[b.To], s.floor)
		residual[b.From] += amps
		residual[b.To] -= amps
		if !fill {
			continue
		}
		s.matrix.values[s.matrix.place[b.From]] += siemens
		s.matrix.values[s.matrix.place[b.To]] += siemens
		if !s.pinned[b.From] && !s.pinned[b.To] {
			s.matrix.values[s.between[i]] -= siemens
		}
	}
	largest := 0.0
	for node, r := range residual {
		if s.pinned[node] {
			residual[node] = 0
			if fill {
				s.matrix.values[s.matrix.place[node]] = 1
			}
			continue
		}
		largest = math.Max(largest, math.Abs(r))
	}
	return largest
}

// flows writes down what passes through every branch.
func (s *solver) flows() []Flow {
	out := make([]Flow, len(s.live))
	for i := range s.live {
		b := &s.live[i]
		if s.open[i] {
			out[i] = Flow{Open: true, Drop: s.volts[b.From] - s.volts[b.To]}
			continue
		}
		v := s.volts[b.From] - s.volts[b.To]
		amps, _ := flow(b, v, s.floor)
		f := Flow{Current: amps, Drop: v, Heat: v * amps}
		if b.Law == circuit.VoltageSource {
			f.Heat = amps * amps * b.Ohms
		}
		out[i] = f
	}
	return out
}
