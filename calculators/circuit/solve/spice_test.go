package solve

import (
	"math"
	"testing"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
)

// TestAgainstSPICE solves every test circuit in every state with ngspice, an
// independent simulator, and compares every node voltage.
func TestAgainstSPICE(t *testing.T) {
	spice := circuittest.LookSPICE(t)
	all := circuittest.Circuits(t)
	if len(all) < 30 {
		t.Errorf("%d test circuits; at least 30 topologies are to be compared", len(all))
	}
	for name, text := range all {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			n := circuittest.Build(t, text)
			for state := range n.States {
				compareSPICE(t, spice, n, state)
			}
		})
	}
}

func compareSPICE(t *testing.T, spice string, n *circuit.Network, state int) {
	s := newSolver(n)
	mine := s.settle(state)
	if !mine.Settled {
		return // a circuit without rest has nothing to compare
	}
	tolerance := 1e-9
	for i := range s.live {
		if l := s.live[i].Law; !s.open[i] && (l == circuit.PowerLoad || l == circuit.LEDString) {
			tolerance = max(tolerance, 1e-6) // V; ngspice follows a behavioral source only so far
		}
		if l := s.live[i].Law; !s.open[i] && (l == circuit.Regulated || s.live[i].Kind == circuit.DiodeKind) {
			tolerance = max(tolerance, 1e-6)
			if math.Abs(mine.Flows[i].Current) < 1e-6 {
				tolerance = 1e-3 // V; a node that hangs on a leak of 1 nS, at ngspice's 1 pA
			}
		}
	}
	theirs := circuittest.SPICE(t, spice, AppendNetlist(nil, n, state))
	compared := 0
	for node, v := range mine.Volts {
		name := s.deckNode(node)
		if name == "0" {
			continue
		}
		want, ok := theirs[name]
		if !ok {
			continue // nothing but open branches meets there
		}
		compared++
		if math.Abs(v-want) > tolerance {
			t.Errorf("%s: node %d has %.9f V, SPICE says %.9f V", n.States[state].Name, node, v, want)
		}
	}
	if compared == 0 {
		t.Errorf("%s: no node compared", n.States[state].Name)
	}
}
