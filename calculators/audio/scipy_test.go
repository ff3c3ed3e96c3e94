package audio_test

import (
	"math/rand/v2"
	"testing"

	"baybook/calculators/audio"
	"baybook/calculators/calc"
	"baybook/calculators/calctest"
)

// boxScript takes boxes as transfer functions (Small 1972 and 1973) and finds
// with scipy what the calculators find: levels with signal.freqs, half power
// with a fine scan from the top and brentq, the peak with a bounded search.
const boxScript = `
import json, sys
import numpy as np
from scipy import optimize, signal

def sealed(b):
    a = 1 + b["vas"] / b["volume"]
    w, q = 2 * np.pi * b["fs"] * np.sqrt(a), b["qts"] * np.sqrt(a)
    return [1, 0, 0], [1, w / q, w * w]

def vented(b):
    ts, tb = 1 / (2 * np.pi * b["fs"]), 1 / (2 * np.pi * b["tuning"])
    q, ql, alpha = b["qts"], b["ql"], b["vas"] / b["volume"]
    den = [tb**2 * ts**2, tb**2 * ts / q + tb * ts**2 / ql,
           (alpha + 1) * tb**2 + tb * ts / (q * ql) + ts**2, tb / ql + ts / q, 1]
    return [den[0], 0, 0, 0, 0], den

def look(b):
    num, den = (vented if "tuning" in b else sealed)(b)
    def level(f):
        return 20 * np.log10(np.abs(signal.freqs(num, den, 2 * np.pi * np.atleast_1d(f))[1]))
    half = 10 * np.log10(0.5)
    f = np.geomspace(100000, 0.5, 60001)
    over = level(f) - half
    i = np.nonzero(over < 0)[0][0]
    f3 = optimize.brentq(lambda x: level(x)[0] - half, f[i], f[i - 1], xtol=1e-13, rtol=1e-14)
    k = int(np.argmax(over))
    peak = 0.0
    if 0 < k < len(f) - 1:
        best = optimize.minimize_scalar(lambda x: -level(np.exp(x))[0], bounds=(np.log(f[k + 1]), np.log(f[k - 1])),
                                        method="bounded", options={"xatol": 1e-10})
        peak = max(0.0, -best.fun)
    return {"f3": f3, "peak": peak, "level": level(b["probe"])[0]}

json.dump([look(b) for b in json.load(sys.stdin)], sys.stdout)
`

// found is what the script finds for one box.
type found struct{ F3, Peak, Level float64 }

// checkBoxes compares a calculator with scipy on random boxes.
func checkBoxes(t *testing.T, c *calc.Calculator, inputs ...string) {
	t.Helper()
	r := rand.New(rand.NewPCG(5, 6))
	var boxes []map[string]float64
	var results []*calc.Result
	var queries []string
	for len(boxes) < 60 {
		query := calctest.RandomQuery(r, c)
		pairs, _ := calc.ParseQuery(query)
		v, result, _ := c.Answer(pairs)
		if result == nil {
			continue
		}
		box := make(map[string]float64)
		for _, name := range inputs {
			box[name] = v.Num(name)
		}
		boxes, results, queries = append(boxes, box), append(results, result), append(queries, query)
	}
	var theirs []found
	calctest.Python(t, boxScript, boxes, &theirs)
	for i, f := range theirs {
		for _, pair := range []struct {
			name      string
			want, tol float64
			absolute  bool
		}{{"f3", f.F3, 1e-7, false}, {"peak", f.Peak, 1e-6, true}, {"level", f.Level, 1e-7, true}} {
			if got := results[i].Num(pair.name); !calctest.Near(got, pair.want, pair.tol, pair.absolute) {
				t.Errorf("%s?%s: %s is %.12g, scipy finds %.12g", c.Name, queries[i], pair.name, got, pair.want)
			}
		}
	}
}

func TestSealedBoxInScipy(t *testing.T) {
	checkBoxes(t, audio.SealedBox, "fs", "qts", "vas", "volume", "probe")
}

func TestVentedBoxInScipy(t *testing.T) {
	checkBoxes(t, audio.VentedBox, "fs", "qts", "vas", "volume", "tuning", "ql", "probe")
}
