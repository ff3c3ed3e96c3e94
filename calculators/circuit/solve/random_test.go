package solve

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
)

// randomCircuit makes up a network of splices, wires, switches with and
// without resistance, loads of every law and one or two sources.
func randomCircuit(r *rand.Rand) string {
	nodes := 3 + r.IntN(8)
	end := func() string { return fmt.Sprintf("S%d", r.IntN(nodes)) }
	var b strings.Builder
	b.WriteString("splices: [S0")
	for i := 1; i < nodes; i++ {
		fmt.Fprintf(&b, ", S%d", i)
	}
	b.WriteString("]\nsources:\n")
	for i := range 1 + r.IntN(2) {
		fmt.Fprintf(&b, "  B%d: {volts: %.2f, internal: %d mohm, standing: 0, from: S0, to: S%d}\n", i, 11.5+2*r.Float64(), r.IntN(2)*(5+r.IntN(20)), 1+i)
	}
	b.WriteString("switches:\n")
	for i := range 1 + r.IntN(6) {
		fmt.Fprintf(&b, "  K%d: {contact: %d mohm, from: %s, to: %s}\n", i, r.IntN(2)*r.IntN(30), end(), end())
	}
	b.WriteString("loads:\n")
	for i := range 1 + r.IntN(5) {
		law := [...]string{"current: 1.5 A", "power: 8 W", "ohms: 6"}[r.IntN(3)]
		fmt.Fprintf(&b, "  L%d: {%s, from: S%d, to: S0}\n", i, law, 1+r.IntN(nodes-1))
	}
	b.WriteString("wires:\n")
	for i := range nodes + r.IntN(5) {
		fmt.Fprintf(&b, "  W%d: {from: S%d, to: %s, size: 16 AWG, length: %.2f m, colour: RD}\n", i, i%nodes, end(), 0.1+3*r.Float64())
	}
	return b.String()
}

// TestKirchhoffAtRandom sums the currents at every node of random networks,
// the voltages along every branch, and the powers of all of them.
func TestKirchhoffAtRandom(t *testing.T) {
	solved := 0
	for seed := range uint64(400) {
		text := randomCircuit(rand.New(rand.NewPCG(seed, 1)))
		n := circuittest.Build(t, text)
		sol := State(n, 0)
		if !sol.Settled {
			continue // a source of no resistance is shorted
		}
		solved++
		leaves := make([]float64, n.Nodes)
		given, used, most := 0.0, 0.0, 1.0
		for i, f := range sol.Flows {
			b := &n.Branches[i]
			leaves[b.From] += f.Current
			leaves[b.To] -= f.Current
			used += f.Heat
			most = math.Max(most, math.Abs(f.Current))
			if b.Law == circuit.VoltageSource {
				given += b.Volts * f.Current
			}
			if v := sol.Volts[b.From] - sol.Volts[b.To]; math.Abs(v-f.Drop) > 1e-12 {
				t.Errorf("seed %d: %s drops %g V between nodes %g V apart", seed, n.NameOf(b), f.Drop, v)
			}
			if b.Law == circuit.Resistance && !f.Open && math.Abs(f.Drop-b.Ohms*f.Current) > 1e-9*most {
				t.Errorf("seed %d: %s drops %g V at %g A in %g ohm", seed, n.NameOf(b), f.Drop, f.Current, b.Ohms)
			}
		}
		for node, amps := range leaves {
			if math.Abs(amps) > 1e-8*most {
				t.Errorf("seed %d: %g A vanish at node %d of\n%s", seed, amps, node, text)
			}
		}
		if math.Abs(given-used) > 1e-7*math.Max(1, math.Abs(used)) {
			t.Errorf("seed %d: %g W given and %g W used", seed, given, used)
		}
	}
	if solved < 200 {
		t.Errorf("only %d random networks have a solution", solved)
	}
}

// TestZeroOhmIsZero: what no resistance parts has one voltage to the last bit,
// and a ring of such parts divides the current evenly.
func TestZeroOhmIsZero(t *testing.T) {
	n := circuittest.Build(t, `
sources: {B: {volts: 12, internal: 0, standing: 0}}
splices: [S]
switches:
  K1: {contact: 0, from: B+, to: S}
  K2: {contact: 0, from: B+, to: S}
fuses: {F: {rating: 5 A, resistance: 0, from: S}}
loads: {L: {ohms: 4, from: F, to: B-}}
`)
	sol := State(n, 0)
	flow := func(name string) Flow {
		for i := range n.Branches {
			if b := &n.Branches[i]; n.NameOf(b) == name && b.Role == circuit.Through {
				return sol.Flows[i]
			}
		}
		return Flow{}
	}
	for name, amps := range map[string]float64{"B": 3, "K1": 1.5, "K2": 1.5, "F": 3, "L": 3} {
		if got := flow(name).Current; math.Abs(got-amps) > 1e-12 {
			t.Errorf("%s carries %v A, want %v A (12 V on 4 ohm)", name, got, amps)
		}
	}
	if flow("F").Drop != 0 || flow("L").Drop != 12 {
		t.Errorf("the fuse drops %v V and the load has %v V, want 0 V and 12 V", flow("F").Drop, flow("L").Drop)
	}
}

// TestAvailable: behind 1 ohm a source of 12 V gives at most 12²/4 = 36 W
// (maximum power transfer).
func TestAvailable(t *testing.T) {
	n := circuittest.Build(t, `
sources: {E: {volts: 12, internal: 1 ohm, standing: 0}}
loads: {L: {power: 90, from: E+, to: E-}}
`)
	sol := Analyze(n).Solutions[0]
	if sol.Solved() || len(sol.Available) != 1 || math.Abs(90*sol.Available[0]-36) > 1e-6 {
		t.Errorf("solved %v, at most %v of 90 W, want 36 W", sol.Solved(), sol.Available)
	}
}
