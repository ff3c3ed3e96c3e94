package solve

import (
	"bytes"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"baybook/calculators/calctest"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
)

// TestAgainstSPICE solves every test circuit in every state with ngspice, an
// independent simulator, and compares every node voltage.
func TestAgainstSPICE(t *testing.T) {
	spice, err := exec.LookPath("ngspice")
	if err != nil {
		calctest.Missing(t, "ngspice is not installed; apt-get install ngspice, for this is the independent check of the solver")
	}
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
			tolerance = 1e-6 // V; ngspice follows a behavioral source only so far
		}
	}
	theirs := runSPICE(t, spice, AppendNetlist(nil, n, state))
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

// runSPICE finds the node voltages of a deck.
func runSPICE(t *testing.T, spice string, deck []byte) map[string]float64 {
	t.Helper()
	const print = ".control\nset numdgt=14\nop\nprint all\n.endc\n.end\n"
	deck = bytes.Replace(deck, []byte(".op\n.end\n"), []byte(print), 1)
	file := filepath.Join(t.TempDir(), "deck.cir")
	if err := os.WriteFile(file, deck, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(spice, "-b", file).CombinedOutput()
	volts := make(map[string]float64)
	for line := range strings.Lines(string(out)) {
		name, value, ok := strings.Cut(line, " = ")
		if v, bad := strconv.ParseFloat(strings.TrimSpace(value), 64); ok && bad == nil {
			volts[strings.TrimSpace(name)] = v
		}
	}
	if len(volts) == 0 {
		t.Fatalf("ngspice: %v\n%s\n%s", err, out, deck)
	}
	return volts
}
