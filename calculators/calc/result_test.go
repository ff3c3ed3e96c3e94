package calc_test

import (
	"encoding/json"
	"math"
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

func TestVerdicts(t *testing.T) {
	for _, test := range []struct {
		query   string
		verdict calc.Verdict
		reasons []string
	}{
		{"voltage=10&current=10", calc.OK, nil},
		{"voltage=10&current=12.5", calc.Check, []string{"125 W of 1 lamp(s) is over 100 W, by 25 W"}},
		{"voltage=20&current=20", calc.Stop, []string{"400 W is over 200 W"}},
		{"current=0", calc.OK, []string{"shine is left out: it is dark"}},
	} {
		_, r := answer(t, test.query)
		if r.Verdict != test.verdict || !slices.Equal(r.Reasons, test.reasons) {
			t.Errorf("%s: %v, %q", test.query, r.Verdict, r.Reasons)
		}
	}
}

func TestNoNegativeZero(t *testing.T) {
	_, r := answer(t, "")
	r.Set("power", math.Copysign(0, -1))
	r.SetNamed("size", math.Copysign(0, -1), "x")
	if math.Signbit(r.Num("power")) || math.Signbit(r.Num("size")) {
		t.Error("an output holds a negative zero")
	}
}

// printed is the JSON of a result, as a program reads it.
type printed struct {
	Calculator string
	Inputs     map[string]struct {
		Value  float64
		Values []float64
		Unit   string
		Text   string
	}
	Outputs map[string]struct {
		Value *float64
		Unit  string
		Text  string
	}
	Verdict           string
	Reasons, Cautions []string
}

func TestJSON(t *testing.T) {
	v, r := answer(t, "voltage=14400mV&current=0.1&wire=16AWG&lamps=3")
	var got printed
	if err := json.Unmarshal(calc.AppendJSON(nil, v, r), &got); err != nil {
		t.Fatal(err)
	}
	if in := got.Inputs["voltage"]; math.Abs(in.Value-14.4) > 1e-12 || in.Unit != "V" {
		t.Errorf("an input is echoed in its own unit: %+v", in)
	}
	if in := got.Inputs["wire"]; in.Value != calc.AWGArea(16) || in.Unit != "mm2" || in.Text != "16 AWG" {
		t.Errorf("a wire echoes its area and its name: %+v", in)
	}
	if in := got.Inputs["marks"]; !slices.Equal(in.Values, []float64{0.5, 1}) || in.Unit != "m" {
		t.Errorf("a list is echoed: %+v", in)
	}
	if out := got.Outputs["power"]; out.Value == nil || *out.Value != r.Num("power") || out.Unit != "W" {
		t.Errorf("an output at full precision: %+v", out)
	}
	if out := got.Outputs["word"]; out.Value != nil || out.Text != "bright" {
		t.Errorf("an output in words has text in place of a value: %+v", out)
	}
	if got.Calculator != "lamp" || got.Verdict != "ok" || got.Reasons == nil || got.Cautions[0] != "It is hot & bright." {
		t.Errorf("%+v", got)
	}
	v, r = answer(t, "current=0")
	got = printed{}
	if err := json.Unmarshal(calc.AppendJSON(nil, v, r), &got); err != nil {
		t.Fatal(err)
	}
	if _, there := got.Outputs["shine"]; there || len(got.Reasons) != 1 {
		t.Errorf("an absent output is left out and explained: %+v", got)
	}
}

func TestDescription(t *testing.T) {
	var got struct {
		Calculator string
		Inputs     []struct {
			Name, Kind, Unit, Default string
			Min, Max                  *float64
			Choices                   []any
		}
		Outputs []struct{ Name, Unit string }
		Sources []struct{ Text string }
	}
	if err := json.Unmarshal(calc.AppendDescription(nil, lamp), &got); err != nil {
		t.Fatal(err)
	}
	if got.Calculator != "lamp" || len(got.Inputs) != len(lamp.Inputs) || len(got.Outputs) != len(lamp.Outputs) || len(got.Sources) != 1 {
		t.Errorf("%+v", got)
	}
	for i, in := range got.Inputs {
		if choice := len(lamp.Inputs[i].Words)+len(lamp.Inputs[i].OneOf) > 0; choice == (len(in.Choices) == 0) || choice == (in.Min != nil) {
			t.Errorf("%s has choices %v and least %v", in.Name, in.Choices, in.Min)
		}
		if in.Default != lamp.Inputs[i].Default {
			t.Errorf("%s has the default %q", in.Name, in.Default)
		}
	}
}

func TestText(t *testing.T) {
	v, r := answer(t, "voltage=20&current=20")
	text := string(calc.AppendText(nil, v, r))
	for _, line := range []string{"  voltage              20 V\n", "  power                400 W\n", "  size                 16 AWG\n",
		"Verdict: stop\n  - 400 W is over 200 W\n", "  caution: It is hot & bright.\n"} {
		if !strings.Contains(text, line) {
			t.Errorf("no %q in\n%s", line, text)
		}
	}
	markup := string(calc.AppendMarkup(nil, v, r, ""))
	for _, piece := range []string{`data-verdict="stop"`, `<dd data-output="power">400 W</dd>`, "It is hot &amp; bright."} {
		if !strings.Contains(markup, piece) {
			t.Errorf("no %q in\n%s", piece, markup)
		}
	}
	if s := calc.Summary(r); s != "Stop. Power 400 W." {
		t.Errorf("summary %q", s)
	}
}
