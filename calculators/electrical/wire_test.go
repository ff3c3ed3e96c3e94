package electrical_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/electrical"
)

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

// same reports whether two numbers are equal but for rounding.
func same(a, b float64) bool { return !calc.Over(a, b) && !calc.Under(a, b) }

// largest are the highest resistances at 20 °C in ohm/km that IEC 60228
// allows a copper conductor of class 2 and of class 5, plain, by mm2.
var largest = []struct{ area, class2, class5 float64 }{
	{0.5, 36.0, 39.0}, {0.75, 24.5, 26.0}, {1.5, 12.1, 13.3}, {2.5, 7.41, 7.98}, {6, 3.08, 3.30}, {10, 1.83, 1.91},
	{25, 0.727, 0.780}, {35, 0.524, 0.554}, {70, 0.268, 0.272}, {95, 0.193, 0.206}, {120, 0.153, 0.161},
}

// TestConductorResistance: a conductor of nominal area lies under the largest
// resistance of its size, and not far under.
func TestConductorResistance(t *testing.T) {
	copper := electrical.MaterialNamed("copper")
	for _, l := range largest {
		got := 1e3 * electrical.ConductorResistance(copper, 20, 1, l.area*1e-6)
		if got > l.class2 || got < 0.93*l.class2 || got > l.class5 || got < 0.87*l.class5 {
			t.Errorf("%g mm2: %.4g ohm/km, IEC 60228 allows %g (class 2) and %g (class 5)", l.area, got, l.class2, l.class5)
		}
	}
}

// TestTemperature holds the warmed resistance to the factors of IEC 60228
// Annex B (from memory), which are 1/(1 + 0.004·(T − 20)), within 1 %, and to
// NBS Handbook 100 (from memory), R2 = R1·(234.5 + T2)/(234.5 + T1).
func TestTemperature(t *testing.T) {
	copper := electrical.MaterialNamed("copper")
	for celsius, factor := range map[float64]float64{5: 1.064, 20: 1, 35: 0.943, 50: 0.893, 75: 0.820, 100: 0.758} {
		ratio := copper.At(celsius) / copper.At(20)
		if math.Abs(ratio*factor-1) > 0.01 {
			t.Errorf("at %g C resistance is %.4f of that at 20 C, the standard's factor %g", celsius, ratio, factor)
		}
		if want := (234.5 + celsius) / 254.5; math.Abs(ratio/want-1) > 1e-3 {
			t.Errorf("at %g C resistance is %.5f of that at 20 C, the handbook's %.5f", celsius, ratio, want)
		}
	}
}

// TestAluminium is the table of what other metals cost at 4 AWG (ASTM B233,
// ASTM B566): 1.639 times copper for aluminium, 1.590 for 10 % clad.
func TestAluminium(t *testing.T) {
	copper := compute(t, electrical.WireDrop, "wire=4AWG").Num("resistance")
	for name, want := range map[string]float64{"aluminium": 1.639, "cca": 1.590} {
		if got := compute(t, electrical.WireDrop, "wire=4AWG&conductor="+name).Num("resistance") / copper; math.Abs(got-want) > 6e-4 {
			t.Errorf("%s has %.4f times the resistance of copper, want %g", name, got, want)
		}
	}
}

// TestWireDropLaws: in proportion to current and length, against area, one
// answer for one run in any unit, two wires twice one, and Ohm's law.
func TestWireDropLaws(t *testing.T) {
	run := func(query string) *calc.Result { return compute(t, electrical.WireDrop, query) }
	base := run("current=5A&length=4m&wire=2mm2")
	for _, test := range []struct {
		query  string
		factor float64
	}{
		{"current=10A&length=4m&wire=2mm2", 2}, {"current=5A&length=8m&wire=2mm2", 2}, {"current=5A&length=4m&wire=4mm2", 0.5},
		{"current=5000mA&length=400cm&wire=0.02cm2", 1}, {"current=5A&length=4m&wire=2mm2&back=body&body_resistance=0", 0.5},
		{"current=5A&length=4m&wire=2mm2&temperature=68F", 1},
	} {
		if got := run(test.query).Num("drop") / base.Num("drop"); !same(got, test.factor) {
			t.Errorf("%s: %.10g times the drop, want %g", test.query, got, test.factor)
		}
	}
	if !same(base.Num("drop"), 5*base.Num("resistance")/1e3) || !same(base.Num("lost"), 5*base.Num("drop")) ||
		!same(base.Num("at_load")+base.Num("drop"), 12.6) || !same(base.Num("drop_percent"), 100*base.Num("drop")/12.6) {
		t.Errorf("the outputs do not agree with each other: %+v", base.Outputs)
	}
}

// TestSmallest: the size named keeps the limit, and the next thinner one of
// its list does not.
func TestSmallest(t *testing.T) {
	for _, current := range []float64{0.5, 3, 8, 20, 60} {
		for _, length := range []float64{0.5, 2, 6} {
			query := fmt.Sprintf("current=%gA&length=%gm&limit=3%%25", current, length)
			r := compute(t, electrical.WireDrop, query)
			for name, sizes := range map[string][]electrical.Size{"smallest_awg": electrical.GaugeSizes(), "smallest_metric": electrical.MetricSizes()} {
				checkSmallest(t, query, r.Get(name), sizes)
			}
		}
	}
	r := compute(t, electrical.WireDrop, "current=500A&length=60m")
	if r.Get("smallest_awg").Present || r.Get("smallest_metric").Present || !strings.Contains(strings.Join(r.Reasons, " "), "no smallest AWG size") {
		t.Errorf("no wire carries that, but: %+v, %q", r.Outputs, r.Reasons)
	}
}

func checkSmallest(t *testing.T, query string, a calc.Answer, sizes []electrical.Size) {
	t.Helper()
	for i, s := range sizes {
		share := compute(t, electrical.WireDrop, query+"&wire="+strings.ReplaceAll(s.Name, " ", "%20")).Num("drop_percent")
		if keeps := !calc.Over(share, 3); keeps != (a.Present && s.Area >= a.Num) {
			t.Errorf("%s: %s loses %.4g %%, named is %+v", query, s.Name, share, a)
		}
		if a.Present && s.Area == a.Num && !strings.HasPrefix(a.Text, sizes[i].Name) {
			t.Errorf("%s: %g mm2 is named %s", query, a.Num, a.Text)
		}
	}
}

// TestLeadsOn: a drop over its limit points at the calculator that picks a
// wire, filled in so that it answers the same run.
func TestLeadsOn(t *testing.T) {
	pairs, _ := calc.ParseQuery("current=12A&length=16ft&wire=18AWG&limit=4%25")
	v, r, _ := electrical.WireDrop.Answer(pairs)
	if len(r.Links) != 1 || strings.Contains(strings.Join(r.Reasons, " "), "calc:") || !strings.Contains(r.Reasons[0], r.Links[0].Words) {
		t.Fatalf("links %+v, reasons %q", r.Links, r.Reasons)
	}
	query, msg := calc.ParseQuery(r.Links[0].Query)
	_, plan, problems := electrical.FeedPlan.Answer(query)
	if msg != "" || plan == nil || r.Links[0].Calculator != electrical.FeedPlan.Name {
		t.Fatalf("%+v does not compute: %s %v", r.Links[0], msg, problems)
	}
	if !calc.Under(plan.Num("drop_percent"), 4) {
		t.Errorf("the wire that it leads to loses %g %%", plan.Num("drop_percent"))
	}
	want := `<a href="../calculators/feed-plan.html#calculator-1?current=12%20A&amp;length=16%20ft&amp;`
	if markup := string(calc.AppendMarkup(nil, v, r, "../")); !strings.Contains(markup, want) {
		t.Errorf("no link in %s", markup)
	}
}
