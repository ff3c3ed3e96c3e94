package electrical_test

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/calctest"
	"baybook/calculators/electrical"
)

// metric is ISO 10133 Table A.1 (from memory): amperes at 30 °C with 105 °C
// insulation by mm2, another rule made for the same wires.
var metric = map[float64]float64{1: 20, 1.5: 25, 2.5: 35, 4: 45, 6: 60, 10: 90, 16: 130, 25: 170, 35: 210, 50: 270, 70: 330, 95: 390}

// TestMetricAmpacity: interpolated between gauges, metric sizes come to within
// 13 % of what the metric rule gives them.
func TestMetricAmpacity(t *testing.T) {
	for area, want := range metric {
		got, ok := electrical.TableAmpacity(area*1e-6, 105)
		if !ok || math.Abs(got/want-1) > 0.13 {
			t.Errorf("%g mm2: %.4g A, %v; ISO 10133 %g A", area, got, ok, want)
		}
	}
}

// interpolation is the table read again by numpy on logarithmic axes.
const interpolation = `
import json, sys
import numpy as np
gauges = [18, 16, 14, 12, 10, 8, 6, 4, 3, 2, 1, 0, -1, -2, -3]
amps = [20, 25, 35, 45, 60, 80, 120, 160, 180, 210, 245, 285, 330, 385, 445]  # 33 CFR 183.425 Table 5, 105 C
areas = [np.pi / 4 * (0.127 * 92 ** ((36 - n) / 39)) ** 2 for n in gauges]
json.dump(list(np.exp(np.interp(np.log(json.load(sys.stdin)), np.log(areas), np.log(amps)))), sys.stdout)
`

func TestAmpacityInNumpy(t *testing.T) {
	var areas []float64
	for a := 0.83; a < 107; a *= 1.037 {
		areas = append(areas, a)
	}
	var theirs []float64
	calctest.Python(t, interpolation, areas, &theirs)
	for i, a := range areas {
		if got, ok := electrical.TableAmpacity(a*1e-6, 105); !ok || math.Abs(got/theirs[i]-1) > 1e-9 {
			t.Errorf("%g mm2: %.10g A, %v; numpy %.10g A", a, got, ok, theirs[i])
		}
	}
}

// TestWireLimitFalls: a thicker wire never carries less; hotter air, colder
// insulation and company never let it carry more.
func TestWireLimitFalls(t *testing.T) {
	insulations := []float64{60, 75, 80, 90, 105, 125}
	last := make([]float64, len(insulations))
	for area := 0.13; area < 107.2; area *= 1.01 {
		for i, c := range insulations {
			got, ok := electrical.WireLimit(area*1e-6, c, 40, 1)
			if !ok || got < last[i] {
				t.Fatalf("%g mm2 at %g C carries %g A, a thinner one %g A", area, c, got, last[i])
			}
			if i > 0 && got < last[i-1] {
				t.Fatalf("%g mm2 carries %g A at %g C, but %g A at %g C", area, got, c, last[i-1], insulations[i-1])
			}
			last[i] = got
		}
	}
	for _, worse := range []string{"ambient=41C", "ambient=105F", "bundled=4", "insulation=90C"} {
		if a, b := compute(t, electrical.FuseSize, "").Num("wire_limit"), compute(t, electrical.FuseSize, worse).Num("wire_limit"); b >= a {
			t.Errorf("%s: %g A, without %g A", worse, b, a)
		}
	}
}

func TestAmpacityEnds(t *testing.T) {
	for _, test := range []struct {
		area, insulation float64
		ok               bool
	}{
		{calc.AWGArea(26), 105, true}, {calc.AWGArea(27), 105, false}, {calc.AWGArea(-3), 105, true}, {108, 105, false},
		{1, 70, false}, {1, 200, false},
	} {
		if got, ok := electrical.TableAmpacity(test.area*1e-6, test.insulation); ok != test.ok {
			t.Errorf("%g mm2, %g C: %g A, %v", test.area, test.insulation, got, ok)
		}
	}
}

var named = regexp.MustCompile(`smallest size that carries it is (\S+ AWG)`)

// TestStopNamesSize: where the fuse is too large for the wire, the size named
// carries it, and the next thinner one in the shop does not.
func TestStopNamesSize(t *testing.T) {
	sizes := electrical.GaugeSizes()
	for load := 1.0; load <= 240; load *= 1.3 {
		query := fmt.Sprintf("load=%gA&ambient=55C&bundled=3&insulation=90C", load)
		r := compute(t, electrical.FuseSize, query+"&wire=26AWG")
		if r.Verdict != calc.Stop {
			if calc.Over(r.Num("fuse"), r.Num("wire_limit")) {
				t.Errorf("%s: %+v passes", query, r.Outputs)
			}
			continue
		}
		found := named.FindStringSubmatch(strings.Join(r.Reasons, " "))
		thinner := calc.Stop
		for _, s := range sizes {
			v := compute(t, electrical.FuseSize, query+"&wire="+strings.ReplaceAll(s.Name, " ", "")).Verdict
			if v != calc.Stop && thinner == calc.Stop && (found == nil || found[1] != s.Name) {
				t.Errorf("%s: the first that carries it is %s, named is %q", query, s.Name, found)
			}
			thinner = v
		}
		if thinner == calc.Stop && found != nil {
			t.Errorf("%s: nothing carries it, named is %q", query, found)
		}
	}
}

// TestFuseCarries: the fuse is a standard rating, no more than four fifths
// used (125 % of the load, US Navy NEETS Module 3), and the next smaller one
// would be.
func TestFuseCarries(t *testing.T) {
	ratings := []float64{2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300}
	for load := 0.05; load <= 240; load *= 1.07 {
		got, ok := electrical.FuseFor(load)
		if !ok {
			t.Fatalf("no fuse for %g A", load)
		}
		for _, rating := range ratings {
			if carries := 1.25*load <= rating; carries != (rating >= got) {
				t.Errorf("%g A: fuse %g A, but %g A carries it: %v", load, got, rating, carries)
			}
		}
	}
	if r, ok := electrical.FuseFor(240.1); ok {
		t.Errorf("240.1 A gets a fuse of %g A", r)
	}
}

// TestTapAdds: total and spare add up, and the tap is judged as its parts are.
func TestTapAdds(t *testing.T) {
	for _, slot := range []float64{5, 7.5, 15, 40} {
		for _, added := range []float64{0.2, 2, 4, 9} {
			r := compute(t, electrical.FuseTap, fmt.Sprintf("slot_fuse=%gA&existing=1500mA&added=%gA&wire=16AWG", slot, added))
			if !same(r.Num("total"), 1.5+added) || !same(r.Num("spare")+r.Num("total"), 0.8*slot) {
				t.Errorf("slot %g A, added %g A: %+v", slot, added, r.Outputs)
			}
			alone, _ := electrical.FuseFor(added)
			wrong := calc.Over(r.Num("total"), 0.8*slot) || alone > slot || calc.Over(alone, r.Num("wire_limit"))
			if wrong != (r.Verdict == calc.Stop) {
				t.Errorf("slot %g A, added %g A: %v, %q", slot, added, r.Verdict, r.Reasons)
			}
		}
	}
}
