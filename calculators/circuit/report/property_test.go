package report

import (
	"baybook/calculators/circuit/list"
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"math"
	"reflect"
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/circuittest"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/solve"
)

// TestKirchhoff sums the currents at every node, and the powers of every
// circuit: what the sources' electromotive force gives is what everything
// turns into heat.
func TestKirchhoff(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		n := circuittest.Build(t, text)
		for state := range n.States {
			sol := solve.State(n, state)
			leaves := make([]float64, n.Nodes)
			given, used := 0.0, 0.0
			for i, f := range sol.Flows {
				b := &n.Branches[i]
				leaves[b.From] += f.Current
				leaves[b.To] -= f.Current
				used += f.Heat
				if b.Law == circuit.VoltageSource {
					given += b.Volts * f.Current
				}
				if b.Law == circuit.Regulated { // its own voltage is what it must be at the limit
					given += f.Heat - f.Drop*f.Current
				}
			}
			for node, amps := range leaves {
				if math.Abs(amps) > 1e-6 {
					t.Errorf("%s: %g A vanish at node %d", name, amps, node)
				}
			}
			if math.Abs(given-used) > 1e-7*math.Max(1, given) {
				t.Errorf("%s: %g W given and %g W used", name, given, used)
			}
		}
	}
}

// TestEncode writes every test circuit as text and reads it back the same.
func TestEncode(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		d := circuittest.Draft(t, text)
		back, msg := circuit.Decode(d.Encode())
		if msg != "" {
			t.Fatalf("%s: %s", name, msg)
		}
		if !reflect.DeepEqual(back, d) {
			t.Errorf("%s: read back as %+v", name, back)
		}
	}
}

// TestAsk changes a circuit as the browser does: the built page and the live
// one are the same bytes, and a longer wire loses more.
func TestAsk(t *testing.T) {
	d := circuittest.Draft(t, circuittest.Circuits(t)["light"])
	n, _ := d.Build()
	want := AppendMarkup(nil, judge.Assess(n), draw.View{State: "key on"})
	got, problems := Ask(d.Encode(), "state=key%20on")
	if len(problems) > 0 || !bytes.Equal(got, want) {
		t.Errorf("asked for nothing new, got another page: %v", problems)
	}
	voltsOf := func(query string) float64 {
		pairs, _ := calc.ParseQuery(query)
		changed, problems := d.Change(pairs)
		if len(problems) > 0 {
			t.Fatal(problems[0])
		}
		n, _ := changed.Build()
		return solve.State(n, 1).Flows[circuittest.LoadBranch(n, "lamp")].Drop
	}
	if near, far := voltsOf(""), voltsOf("wire.W3.length=12m"); far >= near {
		t.Errorf("with a longer wire the lamp has %v V, not less than %v V", far, near)
	}
	for query, want := range map[string]string{
		"wire.W3.length=12kg":   "is a mass",
		"wire.W9.length=12m":    "not a value of this circuit",
		"wire.W3.colour=BU":     "not a value of this circuit",
		"load.lamp.current=":    "nothing given",
		"width=1":               "is outside",
		"load.lamp.current=-1A": "is outside",
	} {
		if _, problems := Ask(d.Encode(), query); len(problems) != 1 || !strings.Contains(problems[0].Error(), want) {
			t.Errorf("%s: %v, want %q", query, problems, want)
		}
	}
	keys := make(map[string]string)
	for _, a := range d.Adjustments() {
		keys[a.Key] = a.Value
	}
	for key, value := range map[string]string{"load.lamp.current": "2 A", "wire.W3.length": "4 m", "wire.W3.size": "16 AWG", "fuse.F1.rating": "5 A"} {
		if keys[key] != value {
			t.Errorf("%s may be changed from %q, want %q", key, keys[key], value)
		}
	}
	if _, ok := keys["wire.W5.length"]; ok {
		t.Error("a wire of the vehicle may be changed")
	}
}

// TestWritten reads what is written for programs with readers of others.
func TestWritten(t *testing.T) {
	for name, text := range circuittest.Circuits(t) {
		s := judge.Assess(circuittest.Build(t, text))
		var object map[string]any
		if err := json.Unmarshal(AppendJSON(nil, s), &object); err != nil {
			t.Errorf("%s: JSON: %v", name, err)
		}
		for what, doc := range map[string][]byte{"markup": AppendMarkup(nil, s, draw.View{}), "drawing": draw.Drawing(s, draw.View{}).AppendSVG(nil)} {
			dec := xml.NewDecoder(bytes.NewReader(doc))
			dec.Strict = what == "drawing"
			dec.AutoClose, dec.Entity = xml.HTMLAutoClose, xml.HTMLEntity
			for {
				if _, err := dec.Token(); errors.Is(err, io.EOF) {
					break
				} else if err != nil {
					t.Errorf("%s: %s: %v", name, what, err)
					break
				}
			}
			if bytes.Contains(doc, []byte("NaN")) || bytes.Contains(doc, []byte("Inf")) || bytes.Contains(doc, []byte(">-0 ")) {
				t.Errorf("%s: %s holds a number that is none", name, what)
			}
		}
		if len(AppendText(nil, s)) == 0 || Summary(s, draw.View{}) == "" || len(Legend(s)) == 0 && len(list.Parts(s.Network)) == 0 {
			t.Errorf("%s: nothing said", name)
		}
	}
}

// FuzzAsk checks that no text makes the browser's door fail, nor gives it a
// number that is none.
func FuzzAsk(f *testing.F) {
	for _, text := range circuittest.Circuits(f) {
		f.Add(circuittest.Draft(f, text).Encode(), "load.lamp.current=3A&state=reverse")
	}
	f.Add("title\tx\nsource\tb\nload\tl\tohms=1\tfrom=b+\tto=b-\n", "")
	f.Fuzz(func(t *testing.T, encoded, query string) {
		if len(encoded) > 4000 {
			return
		}
		markup, _ := Ask(encoded, query)
		if bytes.Contains(markup, []byte("NaN")) {
			t.Errorf("NaN in the answer to %q %q", encoded, query)
		}
	})
}
