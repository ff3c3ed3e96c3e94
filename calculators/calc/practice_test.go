package calc_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

// TestDraw: the same seed gives the same problem, every draw is in range and
// round, and all of the range is used.
func TestDraw(t *testing.T) {
	s := sweep(t, "voltage=6..24V&current=500..1500mA&lamps=1..3")
	seen := make(map[string]bool)
	lamps := make(map[string]bool)
	for seed := range uint64(300) {
		pairs := s.Draw(seed, 0)
		if !slices.Equal(pairs, s.Draw(seed, 0)) {
			t.Fatalf("seed %d is drawn in two ways", seed)
		}
		for _, p := range pairs {
			if len(p.Value) > len("1500 mA") {
				t.Errorf("%s=%s is no round value", p.Key, p.Value)
			}
			if p.Key == "lamps" {
				lamps[p.Value] = true
			}
		}
		v, problems := lamp.Read(pairs)
		if len(problems) > 0 {
			t.Fatalf("%v: %v", pairs, problems[0])
		}
		if a := v.Num("current"); a < 0.5-1e-9 || a > 1.5+1e-9 {
			t.Errorf("current %v is out of its range", a)
		}
		seen[calc.FormatQuery(pairs)] = true
	}
	if len(seen) < 250 || len(lamps) != 3 {
		t.Errorf("300 seeds give %d problems and %d counts of lamps", len(seen), len(lamps))
	}
}

// TestDrawPasses: a draw for which the answer does not exist is passed over.
func TestDrawPasses(t *testing.T) {
	s := sweep(t, "current=0..1A")
	shine := lamp.Output("shine")
	for seed := range uint64(400) {
		if _, r, _ := lamp.Answer(s.Draw(seed, shine)); r == nil || !r.Outputs[shine].Present {
			t.Fatalf("seed %d draws %v, which has no answer", seed, s.Draw(seed, shine))
		}
	}
}

func TestMark(t *testing.T) {
	pairs := pairsOf(t, "voltage=12&current=5A")
	for _, test := range []struct {
		output, typed string
		read, right   bool
		says          string
	}{
		{"power", "60", true, true, "Right. It is 60 W."},
		{"power", "60 W", true, true, "Right"},
		{"power", "0.06kW", true, true, "Right"},
		{"power", "61.1", true, true, "Right"},
		{"power", "61.3", true, false, "Not yet. It is 60 W."},
		{"power", "-60", true, false, "Not yet"},
		{"power", "60 V", false, false, "60 V is a voltage; give a power (W)"},
		{"power", "sixty", false, false, "not a number"},
		{"power", "60,0", true, true, "Right"},
		{"power", "60,000", false, false, "could be 60.000 or 60000"},
		{"size", "16 AWG", true, true, "Right. It is 16 AWG."},
		{"size", "16", false, false, "16 AWG or 16 mm2"},
		{"size", "14awg", true, false, "Not yet"},
		{"word", " Bright ", true, true, "Right"},
		{"word", "dark", true, false, "It is bright."},
	} {
		m := calc.Mark(lamp, pairs, lamp.Output(test.output), test.typed)
		if m.Read != test.read || m.Right != test.right || !strings.Contains(m.Text, test.says) {
			t.Errorf("%s %q: %+v, want read %v, right %v, saying %q", test.output, test.typed, m, test.read, test.right, test.says)
		}
		if m.Read && len(m.Working) == 0 {
			t.Errorf("%q: no working is shown", test.typed)
		}
	}
	m := calc.Mark(lamp, pairsOf(t, "current=0"), lamp.Output("shine"), "1")
	if m.Read || m.Right || !strings.Contains(m.Text, "no answer") {
		t.Errorf("marked an answer that does not exist: %+v", m)
	}
}

func TestGivens(t *testing.T) {
	pairs := pairsOf(t, "voltage=12&current=500mA")
	v, _ := lamp.Read(pairs)
	got := string(calc.AppendGivens(nil, v, pairs))
	if !strings.Contains(got, "<dt>Current</dt><dd>500 mA</dd>") || strings.Contains(got, "Lamps") {
		t.Errorf("givens %s", got)
	}
}

// FuzzMark: no answer typed panics, and what is right is near.
func FuzzMark(f *testing.F) {
	f.Add("60 W")
	f.Add("1e999")
	f.Fuzz(func(t *testing.T, typed string) {
		m := calc.Mark(lamp, nil, 0, typed)
		if q, msg := calc.ParseQuantity(typed); m.Right && (msg != "" || math.Abs(q.Value*q.Unit.Base-24) > 0.5 && !q.Bare) {
			t.Errorf("%q is marked right: %+v", typed, m)
		}
	})
}
