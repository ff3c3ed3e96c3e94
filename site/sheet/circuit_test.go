package sheet

import (
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/draw"

	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site/finding"
)

// lighting is a circuit that is read without a finding.
const lighting = `title: Reading light
source:
  battery: {volts: 12.6, internal: 8 mohm}
fuses:
  F1: {rating: 5 A, type: C}
switches: [key]
loads:
  lamp: {current: 2 A, type: lamp}
grounds:
  G0: {point: tray}
  G1: {point: rear rail}
wires:
  W1: {from: battery+, to: F1, size: 16 AWG, length: 15 cm, colour: RD}
  W2: {from: F1, to: key, size: 16 AWG, length: 2 m, colour: RD}
  W3: {from: key, to: lamp, size: 16 AWG, length: 4 m, colour: RDYE}
  W4: {from: lamp, to: G1, size: 16 AWG, length: 30 cm, colour: BK}
  W5: {from: battery-, to: G0, size: 4 AWG, length: 40 cm, colour: BK, vehicle: yes}
states:
  key off: {parked: yes}
  key on:
    closed: [key]
limits: {drop: 3 %}
`

func TestCircuitIsRead(t *testing.T) {
	circuits, list := ReadCircuits("light.yaml", []byte(lighting))
	if len(list) > 0 || len(circuits) != 1 || circuits[0].Network == nil {
		t.Fatalf("not read: %v", list)
	}
	n := circuits[0].Network
	if n.Title != "Reading light" || len(n.States) != 2 || n.Part("key") == nil || n.Part("W3").(*circuit.Wire).Length != 4 {
		t.Errorf("read wrongly: %+v", n)
	}
	if s := circuits[0].Assessment(); len(s.Judgments) > 0 {
		t.Errorf("judged: %v", s.Judgments)
	}
}

// TestTestCircuitsAreRead reads the circuits that the solver is tested with.
func TestTestCircuitsAreRead(t *testing.T) {
	files, _ := filepath.Glob("../../calculators/circuit/circuittest/testdata/*.yaml")
	if len(files) < 30 {
		t.Fatalf("only %d test circuits", len(files))
	}
	for _, f := range files {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if circuits, list := ReadCircuits(filepath.Base(f), text); len(list) > 0 || circuits[0].Network == nil {
			t.Errorf("%s: %v", f, list)
		}
	}
}

// TestCircuitInASheet finds the circuit of a fenced block within a list, and
// the place of a fault in the file, not in the block.
func TestCircuitInASheet(t *testing.T) {
	indented := strings.ReplaceAll("```circuit\n"+strings.Replace(lighting, "2 A", "2 kg", 1)+"```\n", "\n", "\n   ")
	text := "---\ntitle: x\n---\nOpening.\n\n## Steps\n\n1. Look at it.\n\n   " + indented + "\n"
	circuits, list := ReadCircuits("a.md", []byte(text))
	if len(circuits) != 1 || len(list) != 1 {
		t.Fatalf("%d circuits, findings %v", len(circuits), list)
	}
	f := list[0]
	if f.Found != "2 kg" || f.Line == "" || text[f.Pos.Offset:f.Pos.Offset+4] != "2 kg" {
		t.Errorf("the fault is placed at %v: %q", f.Pos, f.Found)
	}
}

// TestCircuitFaults wants each fault where it stands, with what to do.
func TestCircuitFaults(t *testing.T) {
	for _, w := range []struct{ old, with, place, found, message, do string }{
		{"wires:", "wirse:", "12:1", "wirse", "not a section", "did you mean wires?"},
		{"wires:", "fuses:", "12:1", "fuses", "given twice", "under one"},
		{"colour: RDYE", "colour: RDXX", "15:64", "RDXX", "not a colour", "give letters of IEC 60757"},
		{"colour: RDYE", "colour: red", "15:64", "red", "is written RD", "give letters of IEC 60757"},
		{"size: 16 AWG, length: 4 m", "size: 16, length: 4 m", "15:35", "16", "16 AWG or 16 mm2", "printed on the insulation"},
		{"from: key,", "from: kye,", "15:14", "kye", "no part named", "did you mean key?"},
		{"to: lamp,", "to: lamp.87,", "15:23", "lamp.87", "no terminal", "lamp+, lamp-"},
		{"length: 4 m", "lenght: 4 m", "15:43", "lenght", "not a key of a wire", "did you mean length?"},
		{", length: 4 m", "", "15:3", "W3", "has no length", "add length"},
		{"F1: {rating: 5 A, type: C}", "F1: {rating: 5 A, type: G}", "5:27", "G", "not one of", "blade"},
		{"lamp: {current: 2 A,", "lamp: {current: 2 A, power: 24 W,", "8:3", "lamp", "2 of current, power, ohms", "exactly one"},
		{"lamp: {", "key: {", "8:3", "key", "two parts are named key", "another name"},
		{"closed: [key]", "closed: [kay]", "21:13", "[kay]", "no switch named", "did you mean key?"},
		{"parked: yes", "parked: maybe", "19:21", "maybe", "not yes or no", "parked: yes"},
		{"limits: {drop: 3 %}", "limits: {drop: 300 %}", "22:16", "300 %", "is outside", "give share of the supply"},
		{"limits: {drop: 3 %}", "wrong: [tap-turn]", "22:9", "tap-turn", "not a judgement", "did you mean tap-turned?"},
		{"source:\n  battery: {volts: 12.6, internal: 8 mohm}\n", "", "1:1", "title: Reading light", "no source", "sources:"},
		{"G1: {point: rear rail}", "G1: {point: {x: 1}}", "11:15", "{x: 1}}", "one value belongs here", "point:"},
		{"title: Reading light", "title: [a", "1:1", "title: [a", "not YAML", "quotes"},
		{"volts: 12.6", "volts: &v 12.6", "3:20", "", "alias", "write the value out"},
	} {
		if !strings.Contains(lighting, w.old) {
			t.Fatalf("nothing to change: %s", w.old)
		}
		_, list := ReadCircuits("c.yaml", []byte(strings.Replace(lighting, w.old, w.with, 1)))
		hit := false
		for _, f := range list {
			hit = hit || fmt.Sprintf("%d:%d", f.Pos.Line, f.Pos.Column) == w.place && (w.found == "" || f.Found == w.found) &&
				strings.Contains(f.Message, w.message) && strings.Contains(f.Do, w.do) && f.Severity == finding.Error
		}
		if !hit {
			t.Errorf("%s → %s: no %s %q at %s, but", w.old, w.with, w.message, w.found, w.place)
			for _, f := range list {
				t.Errorf("   %d:%d %q %s; %s", f.Pos.Line, f.Pos.Column, f.Found, f.Message, f.Do)
			}
		}
	}
}

// FuzzCircuit checks that no text makes the reader fail, that every fault has
// a place and an advice, and that what is read can be solved and drawn.
func FuzzCircuit(f *testing.F) {
	f.Add(lighting)
	files, _ := filepath.Glob("../../calculators/circuit/circuittest/testdata/*.yaml")
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(string(text))
	}
	f.Fuzz(func(t *testing.T, text string) {
		if len(text) > 5000 {
			return
		}
		circuits, list := ReadCircuits("c.yaml", []byte(text))
		for _, found := range list {
			if found.Message == "" || found.Do == "" || found.Pos.Offset > len(text) {
				t.Errorf("a fault without words or place: %+v", found)
			}
		}
		if len(circuits) == 1 && circuits[0].Network != nil {
			if len(list) > 0 {
				t.Error("a network in spite of faults")
			}
			draw.Drawing(circuits[0].Assessment(), draw.View{}).AppendSVG(nil)
		}
	})
}

// TestCircuitSlips: what is mistyped most is told at its own line, and told as
// what it is.
func TestCircuitSlips(t *testing.T) {
	for _, slip := range []struct {
		text         string
		line, column int
		message      string
	}{
		{"sources:\n  battery: {volts: 12,6, internal: 8 mohm}\n", 2, 20, "decimal comma"},
		{"sources:\n  battery: {volts: 12.6, internal 8 mohm}\n", 2, 26, "has no colon"},
		{"sources:\n  battery {volts: 12.6}\n", 2, 3, "has no colon after it"},
	} {
		_, list := ReadCircuits("slip.yaml", []byte(slip.text))
		found := false
		for _, f := range list {
			found = found || strings.Contains(f.Message, slip.message) && f.Pos.Line == slip.line && f.Pos.Column == slip.column
		}
		if !found {
			t.Errorf("%q: no finding at %d:%d that says %q: %v", slip.text, slip.line, slip.column, slip.message, list)
		}
	}
}
