package solve

import (
	"math"

	"baybook/calculators/circuit"
)

// Potentials solves a network of conductances: siemens says what each branch
// conducts, 0 to leave it out, and fixed the potential of each node that is
// held, NaN for the others. The drawing orders nodes by it.
func Potentials(n *circuit.Network, siemens func(branch int) float64, fixed []float64) []float64 {
	return potentials(n, siemens, fixed, make([]float64, n.Nodes))
}

// potentials does that with a current in A put in at each node too; inject is
// overwritten by what is returned.
func potentials(n *circuit.Network, siemens func(branch int) float64, fixed, inject []float64) []float64 {
	alone := make([]int, n.Nodes)
	for i := range alone {
		alone[i] = i
	}
	m, between := newMatrix(n, alone)
	m.clear()
	rhs := inject
	held := func(node int) bool { return !math.IsNaN(fixed[node]) }
	for i := range n.Branches {
		b := &n.Branches[i]
		g := siemens(i)
		if b.From == b.To || g == 0 {
			continue
		}
		for _, way := range [...][2]int{{b.From, b.To}, {b.To, b.From}} {
			m.values[m.place[way[0]]] += g
			if held(way[1]) && !held(way[0]) {
				rhs[way[0]] += g * fixed[way[1]]
			}
		}
		if !held(b.From) && !held(b.To) {
			m.values[between[i]] -= g
		}
	}
	for node := range rhs {
		if held(node) {
			m.values[m.place[node]] = 1
			rhs[node] = fixed[node]
		}
	}
	m.factor()
	m.solve(rhs, rhs)
	return rhs
}
