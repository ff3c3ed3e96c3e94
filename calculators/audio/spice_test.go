package audio_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"baybook/calculators/audio"
	"baybook/calculators/calc"
	"baybook/calculators/calctest"
)

// filters are every filter that the calculator knows.
var filters = []struct {
	family string
	order  int
}{
	{"butterworth", 1}, {"butterworth", 2}, {"butterworth", 3}, {"butterworth", 4},
	{"linkwitz-riley", 2}, {"linkwitz-riley", 4},
}

// compute answers a query or fails the test.
func compute(t *testing.T, c *calc.Calculator, query string) *calc.Result {
	t.Helper()
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		t.Fatal(msg)
	}
	_, r, problems := c.Answer(pairs)
	if r == nil {
		t.Fatalf("%s?%s: %v", c.Name, query, problems[0])
	}
	return r
}

// ladder writes the parts that the calculator gives as a netlist from node in
// into a load in ohm, its names told apart by a letter, and names the node of
// the load.
func ladder(r *calc.Result, high bool, load float64, letter string) (netlist, node string) {
	names := []string{"l1", "c1", "l2", "c2"}
	if high {
		names = []string{"c1", "l1", "c2", "l2"}
	}
	var b strings.Builder
	node = "in"
	for i, name := range names {
		answer := r.Get(name)
		if !answer.Present {
			break
		}
		value := answer.Num * 1e-6 // uF
		if name[0] == 'l' {
			value = answer.Num * 1e-3 // mH
		}
		to := "0"
		if i%2 == 0 {
			to = fmt.Sprintf("%s%d", letter, i)
		}
		fmt.Fprintf(&b, "%s%s %s %s %.15g\n", name, letter, node, to, value)
		if i%2 == 0 {
			node = to
		}
	}
	fmt.Fprintf(&b, "r%s %s 0 %.15g\n", letter, node, load)
	return b.String(), node
}

// TestCrossoverInSpice simulates every ladder from the values that the
// calculator prints, and compares its level at each frequency with ngspice.
func TestCrossoverInSpice(t *testing.T) {
	for _, f := range filters {
		for _, pass := range []string{"low", "high"} {
			query := fmt.Sprintf("pass=%s&order=%d&family=%s&impedance=4&frequency=250", pass, f.order, f.family)
			r := compute(t, audio.Crossover, query)
			circuit, node := ladder(r, pass == "high", 4, "a")
			rows := calctest.Spice(t, "v1 in 0 dc 0 ac 1\n"+circuit, "dec 7 10 20k", "vdb("+node+")")
			for _, row := range rows {
				at := compute(t, audio.Crossover, fmt.Sprintf("%s&probe=%.12g", query, row[0]))
				if got := at.Num("level"); math.Abs(got-row[1]) > 1e-8*math.Max(1, math.Abs(row[1])) {
					t.Errorf("%s at %.6g Hz: %.8g dB, ngspice %.8g dB", query, row[0], got, row[1])
				}
			}
		}
	}
}

// TestCrossoverLoadInSpice: a low-pass and a high-pass side by side are a
// constant load to the amplifier for every Butterworth order, and rise to
// twice the load at the crossover for Linkwitz-Riley (ladder analysis).
func TestCrossoverLoadInSpice(t *testing.T) {
	for _, f := range filters {
		query := fmt.Sprintf("order=%d&family=%s&impedance=8&frequency=2000", f.order, f.family)
		low, _ := ladder(compute(t, audio.Crossover, query+"&pass=low"), false, 8, "a")
		high, _ := ladder(compute(t, audio.Crossover, query+"&pass=high"), true, 8, "b")
		rows := calctest.Spice(t, "v1 in 0 dc 0 ac 1\n"+low+high, "dec 10 20 200k", "mag(v(in)/i(v1))")
		for _, row := range rows {
			want := 8.0
			if f.family == "linkwitz-riley" {
				if math.Abs(row[0]-2000) > 1e-6 {
					continue
				}
				want = 16
			}
			if math.Abs(row[1]/want-1) > 1e-6 {
				t.Errorf("%s at %.6g Hz: the amplifier sees %.8g ohm, want %g", query, row[0], row[1], want)
			}
		}
	}
}

// TestCoilLoadInSpice wires coils as resistors into strings and measures.
func TestCoilLoadInSpice(t *testing.T) {
	for _, c := range []struct{ coils, strings int }{{1, 1}, {2, 2}, {6, 3}, {12, 4}, {16, 8}, {16, 1}} {
		r := compute(t, audio.CoilLoad, fmt.Sprintf("coils=%d&strings=%d&impedance=3.2&amp_minimum=0.5", c.coils, c.strings))
		var b strings.Builder
		each := c.coils / c.strings
		for s := range c.strings {
			node := "in"
			for k := range each {
				to := fmt.Sprintf("n%d_%d", s, k)
				if k == each-1 {
					to = "0"
				}
				fmt.Fprintf(&b, "r%d_%d %s %s 3.2\n", s, k, node, to)
				node = to
			}
		}
		for _, row := range calctest.Spice(t, "v1 in 0 dc 0 ac 1\n"+b.String(), "dec 1 20 20k", "mag(v(in)/i(v1))") {
			if math.Abs(row[1]/r.Num("load")-1) > 1e-9 {
				t.Errorf("%d coils in %d strings: %.9g ohm, ngspice %.9g", c.coils, c.strings, r.Num("load"), row[1])
			}
		}
	}
}
