package solve

import (
	"math"

	"baybook/calculators/circuit"
)

// joined says which nodes are one: a branch of no resistance joins its two, and
// a source of no resistance holds them a fixed voltage apart.
type joined struct {
	// root stands for all nodes that are joined; the voltage of a node is that
	// of its root and its offset in V.
	root   []int
	offset []float64
	any    bool
	// contradicts is true where two ways hold the same nodes at different
	// voltages: a source of no resistance is shorted.
	contradicts bool
}

// joins reports a branch of no resistance at all.
func joins(b *circuit.Branch) bool {
	return b.Ohms == 0 && (b.Law == circuit.Resistance || b.Law == circuit.VoltageSource)
}

func joinNodes(nodes int, live []circuit.Branch, open []bool) joined {
	j := joined{root: make([]int, nodes), offset: make([]float64, nodes)}
	for i := range j.root {
		j.root[i] = i
	}
	for i := range live {
		b := &live[i]
		if open[i] || !joins(b) {
			continue
		}
		j.any = true
		rise := 0.0
		if b.Law == circuit.VoltageSource {
			rise = b.Volts
		}
		from, to := j.root[b.From], j.root[b.To]
		// The voltage of to against from, by way of this branch.
		apart := j.offset[b.From] + rise - j.offset[b.To]
		if from == to {
			j.contradicts = j.contradicts || math.Abs(apart) > 1e-9
			continue
		}
		stays, goes := from, to
		if to < from {
			stays, goes, apart = to, from, -apart
		}
		for node := range j.root {
			if j.root[node] == goes {
				j.root[node] = stays
				j.offset[node] += apart
			}
		}
	}
	return j
}

// spread gives every node the voltage of its root and its offset.
func (j *joined) spread(volts []float64) {
	for node, root := range j.root {
		if node != root {
			volts[node] = volts[root] + j.offset[node]
		}
	}
}

// throughJoined finds the currents in A through the branches of no resistance:
// leaves is what leaves each node through all others. In a ring of such
// branches the current divides as in equal resistances, the limit that it has
// where they are all made smaller and smaller.
func throughJoined(n *circuit.Network, live []circuit.Branch, open []bool, leaves []float64, root []int) []float64 {
	fixed := make([]float64, n.Nodes)
	inject := make([]float64, n.Nodes)
	for node := range fixed {
		fixed[node] = math.NaN()
		if root[node] == node {
			fixed[node] = 0
		} else {
			inject[node] = -leaves[node]
		}
	}
	level := potentials(n, func(branch int) float64 {
		if open[branch] || !joins(&live[branch]) {
			return 0
		}
		return 1
	}, fixed, inject)
	amps := make([]float64, len(live))
	for i := range live {
		amps[i] = level[live[i].From] - level[live[i].To]
	}
	return amps
}
