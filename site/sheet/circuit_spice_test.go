package sheet

import (
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"testing"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/solve"
)

// TestShippedAgainstSPICE solves every circuit of the shipped book with ngspice,
// an independent simulator: in the state that draws most, and in every state
// where BAYBOOK_EVERY_STATE is set.
func TestShippedAgainstSPICE(t *testing.T) {
	spice := circuittest.LookSPICE(t)
	circuits := 0
	err := filepath.WalkDir("../../content", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || filepath.Ext(name) != ".md" {
			return err
		}
		content, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		list, _ := ReadCircuits(filepath.ToSlash(name), content)
		for _, c := range list {
			if c.Network == nil {
				t.Errorf("%s: a circuit cannot be read", name)
				continue
			}
			circuits++
			study := c.Assessment().Study
			for state := range c.Network.States {
				if study.Solutions[state].Solved() && (state == study.Busiest() || os.Getenv("BAYBOOK_EVERY_STATE") != "") {
					compareShipped(t, spice, name, study, state)
				}
			}
		}
		return nil
	})
	if err != nil || circuits < 8 {
		t.Errorf("%d circuits in the book: %v", circuits, err)
	}
}

func compareShipped(t *testing.T, spice, name string, study *solve.Study, state int) {
	n := study.Network
	theirs := circuittest.SPICE(t, spice, solve.AppendNetlist(nil, n, state))
	nodes := solve.DeckNodes(n, state)
	tolerance := 1e-6 // V; ngspice follows a behavioral source only so far
	for i, f := range study.Solutions[state].Flows {
		if b := &n.Branches[i]; !f.Open && (b.Law == circuit.Regulated || b.Kind == circuit.DiodeKind) && math.Abs(f.Current) < 1e-6 {
			tolerance = 1e-3 // V; a node that hangs on a leak of 1 nS, at ngspice's 1 pA
		}
	}
	compared := 0
	for node, v := range study.Solutions[state].Volts {
		want, ok := theirs[nodes[node]]
		if !ok {
			continue // zero by definition, or nothing but open branches meets there
		}
		compared++
		if math.Abs(v-want) > tolerance {
			t.Errorf("%s, %s: node %d has %.9f V, SPICE says %.9f V", name, n.States[state].Name, node, v, want)
		}
	}
	if compared == 0 {
		t.Errorf("%s, %s: no node compared", name, n.States[state].Name)
	}
}
