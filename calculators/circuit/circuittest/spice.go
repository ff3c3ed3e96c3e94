package circuittest

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"baybook/calculators/calctest"
)

// LookSPICE finds ngspice, an independent simulator. Where it is not installed
// the test is skipped, or fails, as calctest.Missing has it.
func LookSPICE(t testing.TB) string {
	t.Helper()
	spice, err := exec.LookPath("ngspice")
	if err != nil {
		calctest.Missing(t, "ngspice is not installed; apt-get install ngspice, for this is the independent check of the solver")
	}
	return spice
}

// SPICE finds the node voltages of a deck with ngspice.
func SPICE(t testing.TB, spice string, deck []byte) map[string]float64 {
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
