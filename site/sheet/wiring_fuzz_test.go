package sheet

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/faults"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/report"
)

// FuzzWiring takes a circuit all the way: read, solved, judged, drawn, listed,
// and every single fault tried. What is drawn is XML, what is listed is CSV
// and JSON, and no number in them is none.
func FuzzWiring(f *testing.F) {
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
		if len(text) > 4000 || strings.Contains(text, "NaN") || strings.Contains(text, "Inf") { // as somebody's own words
			return
		}
		circuits, _ := ReadCircuits("c.yaml", []byte(text))
		for _, c := range circuits {
			a := c.Assessment()
			if a == nil {
				continue
			}
			drawn(t, a)
			allListed(t, a.Network)
			soundJSON(t, "the circuit", report.AppendJSON(nil, a))
			noneIsNone(t, "the text", report.AppendText(nil, a))
			table := faults.New(a.Study)
			soundJSON(t, "the faults", report.AppendFaultsJSON(nil, table))
			for state := range a.Network.States {
				for i, p := range table.Points {
					if i < 3 { // as many as a page asks for
						table.Explain(state, []faults.Reading{{Point: i, Volts: float64(p.Node)}})
					}
				}
			}
			if _, refused := circuit.Decode(c.Draft.Encode()); refused != "" {
				t.Errorf("what the page is sent is not read back: %s", refused)
			}
		}
	})
}

// drawn reads the drawing of every state as XML 1.0.
func drawn(t *testing.T, a *judge.Assessment) {
	t.Helper()
	for i := range a.Network.States {
		svg := draw.Drawing(a, draw.View{State: a.Network.States[i].Name}).AppendSVG(nil)
		noneIsNone(t, "the drawing", svg)
		d := xml.NewDecoder(bytes.NewReader(svg))
		for {
			if _, err := d.Token(); errors.Is(err, io.EOF) {
				break
			} else if err != nil {
				t.Fatalf("the drawing is not XML: %v", err)
			}
		}
	}
	noneIsNone(t, "the markup", report.AppendMarkup(nil, a, draw.View{}))
}

// allListed reads every list as CSV (RFC 4180) and as JSON.
func allListed(t *testing.T, n *circuit.Network) {
	t.Helper()
	for _, name := range report.ListNames() {
		table, ok := report.List(n, name)
		if !ok {
			t.Fatalf("there is no list %s", name)
		}
		rows, err := csv.NewReader(bytes.NewReader(report.AppendCSV(nil, &table))).ReadAll()
		if err != nil || len(rows) != len(table.Rows)+1 {
			t.Errorf("the list of %s has %d rows, read back %d: %v", name, len(table.Rows)+1, len(rows), err)
		}
		soundJSON(t, name, report.AppendListJSON(nil, &table))
	}
}

func soundJSON(t *testing.T, what string, text []byte) {
	t.Helper()
	if !json.Valid(text) {
		t.Errorf("%s is not JSON: %.200s", what, text)
	}
}

// noneIsNone refuses a number that is none where numbers are written with
// units.
func noneIsNone(t *testing.T, what string, text []byte) {
	t.Helper()
	for _, bad := range []string{"NaN", "+Inf", "-Inf"} {
		if bytes.Contains(text, []byte(bad)) {
			t.Errorf("%s holds %s", what, bad)
		}
	}
}
