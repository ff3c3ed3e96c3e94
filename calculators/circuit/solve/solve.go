// Package solve finds what flows in a circuit at rest: node voltages and
// currents in every state, what a short does to each wire, what each fuse
// leaves dead, and how long a parked battery lasts. What it returns is never
// changed afterwards, so goroutines may share it.
package solve

import (
	"math"
	"slices"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/intset"
)

// A Solution is what flows in the circuit at rest in one state.
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
	// there is no way to give it what it asks for. Available is the share of
	// it that the wiring could give, one for each.
	Undervolted []int
	Available   []float64
}

// A Flow is what passes through a branch.
type Flow struct {
	// Open is true where nothing can pass: an open contact, a load that is off.
	Open bool
	// Current from the branch's From to its To, in A; Drop in V the same way;
	// Heat is the power that is turned into heat or used, in W.
	Current, Drop, Heat float64
}

// Solved reports whether there is a solution. Where there is none, the numbers
// here are where the search ended, and are not to be shown.
func (s *Solution) Solved() bool { return s.Settled && len(s.Undervolted) == 0 }

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
	// of are the joined nodes that the matrix was made for.
	of []int
	// For one state: what each branch is, whether it is open, which nodes are
	// joined, and the nodes whose voltage is zero by definition.
	live   []circuit.Branch
	open   []bool
	joined joined
	pinned []bool
	volts  []float64
	// without is a branch that is taken out, -1 where none is; reduced is one
	// whose load asks for a share of what it asks for, -1 where none does.
	without, reduced int
	share            float64
	// taken is the power in W that each converter, by index of the part, takes.
	taken []float64
}

func newSolver(n *circuit.Network) *solver {
	return &solver{n: n, without: -1, reduced: -1, taken: make([]float64, len(n.Parts)),
		live: make([]circuit.Branch, len(n.Branches)), open: make([]bool, len(n.Branches)), pinned: make([]bool, n.Nodes), volts: make([]float64, n.Nodes)}
}

// newMatrix makes the matrix of a network of which some nodes are joined, and
// says where in it the element of each branch stands.
func newMatrix(n *circuit.Network, root []int) (m *SparseLDL, between []int) {
	pairs := make([][2]int, len(n.Branches))
	for i, b := range n.Branches {
		pairs[i] = [2]int{root[b.From], root[b.To]}
	}
	m = newSparseLDL(n.Nodes, pairs)
	for _, p := range pairs {
		at := -1
		if p[0] != p[1] {
			at = m.between(p[0], p[1])
		}
		between = intset.Append(between, at)
	}
	return m, between
}

// join joins the nodes of the live branches, and sees to it that the matrix is
// one for them.
func (s *solver) join() {
	s.joined = joinNodes(s.n.Nodes, s.live, s.open)
	if !slices.Equal(s.of, s.joined.root) {
		s.of = s.joined.root
		s.matrix, s.between = newMatrix(s.n, s.of)
	}
}

// leak is the conductance in S of LEDs below their forward voltage.
const leak = 1e-9

// flow is the current in A through a branch at a voltage, and how it changes with
// the voltage. Loads of constant current or power are resistances under
// their floor, half the supply: no device works there, and a load of constant power
// that is left with less has no solution at all (Thevenin's source gives the
// most power at half its voltage).
func flow(b *circuit.Branch, v float64) (amps, siemens float64) {
	switch b.Law {
	case circuit.Resistance:
		return v / b.Ohms, 1 / b.Ohms
	case circuit.VoltageSource:
		return (v + b.Volts) / b.Ohms, 1 / b.Ohms
	case circuit.Regulated:
		amps, siemens := (v+b.Volts)/b.Ohms, 1/b.Ohms
		switch {
		case amps < 0: // it takes nothing back
			return leak * (v + b.Volts), leak
		case amps > b.Amps:
			return b.Amps + leak*(v+b.Volts-b.Amps*b.Ohms), leak
		}
		return amps, siemens
	case circuit.CurrentLoad:
		if v >= b.Floor {
			return b.Amps, 0
		}
		return b.Amps * v / b.Floor, b.Amps / b.Floor
	case circuit.PowerLoad:
		if v >= b.Floor {
			return b.Watts / v, -b.Watts / (v * v)
		}
		return b.Watts * v / (b.Floor * b.Floor), b.Watts / (b.Floor * b.Floor)
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
		if b := &s.live[i]; b.Drives() && !has[island.root(b.From)] {
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

// held marks the roots of the joined nodes whose voltage is known, and puts
// that voltage into volts.
func (s *solver) held() []bool {
	held := make([]bool, s.n.Nodes)
	clear(s.volts)
	for node, zero := range s.pinned {
		if zero {
			root := s.joined.root[node]
			held[root] = true
			s.volts[root] = -s.joined.offset[node]
		}
	}
	s.joined.spread(s.volts)
	return held
}

// newton finds the node voltages of the live branches. It reports false where
// no voltages satisfy them.
func (s *solver) newton() bool {
	held := s.held()
	if s.joined.contradicts {
		return false
	}
	var limited []int
	for i := range s.live {
		if s.live[i].Law == circuit.Regulated {
			limited = intset.Append(limited, i)
		}
	}
	if len(limited) > 0 { // begin near the end: where none of them is at a limit
		for _, i := range limited {
			s.live[i].Law = circuit.VoltageSource
		}
		s.search(held)
		for _, i := range limited {
			s.live[i].Law = circuit.Regulated
		}
	}
	return s.search(held)
}

// search goes from the voltages that are there to those that satisfy the live
// branches; it reports false where it finds none.
func (s *solver) search(held []bool) bool {
	residual, step, trial := make([]float64, s.n.Nodes), make([]float64, s.n.Nodes), make([]float64, s.n.Nodes)
	size := s.imbalance(s.volts, residual, held, true)
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
				trial[i] = s.volts[i] - share*step[s.joined.root[i]]
			}
			if after := s.imbalance(trial, residual, held, false); after <= size || share*most < 1e-9 {
				break
			}
			share /= 2
		}
		copy(s.volts, trial)
		size = s.imbalance(s.volts, residual, held, true)
		if share*most < 1e-9 {
			return true
		}
	}
	return false
}

// imbalance sums the currents in A that leave each joined node, and says how
// large the largest is. With fill it puts the conductances into the matrix too.
func (s *solver) imbalance(volts, residual []float64, held []bool, fill bool) float64 {
	clear(residual)
	if fill {
		s.matrix.clear()
	}
	for i := range s.live {
		b := &s.live[i]
		from, to := s.joined.root[b.From], s.joined.root[b.To]
		if s.open[i] || from == to {
			continue
		}
		amps, siemens := flow(b, volts[b.From]-volts[b.To])
		residual[from] += amps
		residual[to] -= amps
		if !fill {
			continue
		}
		s.matrix.values[s.matrix.place[from]] += siemens
		s.matrix.values[s.matrix.place[to]] += siemens
		if !held[from] && !held[to] {
			s.matrix.values[s.between[i]] -= siemens
		}
	}
	largest := 0.0
	for node, r := range residual {
		if held[node] {
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

// flows writes down what passes through every branch. What passes through
// joined nodes is what keeps Kirchhoff's law at each of them.
func (s *solver) flows() []Flow {
	out := make([]Flow, len(s.live))
	leaves := make([]float64, s.n.Nodes)
	for i := range s.live {
		b := &s.live[i]
		v := s.volts[b.From] - s.volts[b.To]
		f := Flow{Open: s.open[i], Drop: v}
		if !f.Open && !joins(b) {
			f.Current, _ = flow(b, v)
			f.Heat = v * f.Current
			if b.Drives() {
				f.Heat = f.Current * f.Current * b.Ohms
			}
			leaves[b.From] += f.Current
			leaves[b.To] -= f.Current
		}
		out[i] = f
	}
	if s.joined.any {
		for i, amps := range throughJoined(s.n, s.live, s.open, leaves, s.joined.root) {
			if !s.open[i] && joins(&s.live[i]) {
				out[i].Current = amps
			}
		}
	}
	return out
}
