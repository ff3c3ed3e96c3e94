package calctest

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// systemPython is the interpreter that the distribution's packages belong to;
// another one earlier in the path does not see them.
const systemPython = "/usr/bin/python3"

// Python runs a script with numpy and scipy, input as JSON on its standard
// input, and reads its standard output as JSON into output. Where the
// libraries are absent it skips the test and says what would bring them.
func Python(t *testing.T, script string, input, output any) {
	t.Helper()
	if exec.Command(systemPython, "-c", "import numpy, scipy").Run() != nil {
		t.Skip("no numpy and scipy for " + systemPython + ": apt-get install python3-scipy brings them")
	}
	given, err := json.Marshal(input)
	if err != nil {
		t.Fatal(err)
	}
	var said bytes.Buffer
	cmd := exec.Command(systemPython, "-c", script)
	cmd.Stdin, cmd.Stderr = bytes.NewReader(given), &said
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, said.Bytes())
	}
	if err := json.Unmarshal(out, output); err != nil {
		t.Fatalf("%v in %s", err, out)
	}
}

// Spice sweeps a circuit over frequency with ngspice and gives the values of
// the named vectors at each frequency: rows of frequency, then one column a
// vector. The circuit is a netlist without title and control lines; sweep is
// what stands behind ac, such as "dec 10 10 10k". Where ngspice is absent it
// skips the test.
func Spice(t *testing.T, circuit, sweep string, vectors ...string) [][]float64 {
	t.Helper()
	if _, err := exec.LookPath("ngspice"); err != nil {
		t.Skip("no ngspice: apt-get install ngspice brings it")
	}
	dir := t.TempDir()
	netlist := "* a circuit under test\n" + circuit + "\n.control\nset wr_singlescale\nset numdgt=12\nac " + sweep +
		"\nwrdata out.txt " + strings.Join(vectors, " ") + "\nquit\n.endc\n.end\n"
	if err := os.WriteFile(filepath.Join(dir, "circuit.cir"), []byte(netlist), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("ngspice", "-b", "circuit.cir")
	cmd.Dir = dir
	said, err := cmd.CombinedOutput()
	data, missing := os.ReadFile(filepath.Join(dir, "out.txt"))
	if missing != nil {
		t.Fatalf("ngspice: %v, %v\n%s\n%s", err, missing, netlist, said)
	}
	var rows [][]float64
	for line := range strings.Lines(string(data)) {
		var row []float64
		for field := range strings.FieldsSeq(line) {
			v, err := strconv.ParseFloat(field, 64)
			if err != nil {
				t.Fatalf("ngspice wrote %q", line)
			}
			row = append(row, v)
		}
		if len(row) != 1+len(vectors) {
			t.Fatalf("ngspice wrote %d columns for %d vectors: %q", len(row), len(vectors), line)
		}
		rows = append(rows, row)
	}
	if len(rows) < 2 {
		t.Fatalf("ngspice swept %d frequencies\n%s", len(rows), said)
	}
	return rows
}
