package calc_test

import (
	"strings"
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/shop"
)

// TestWithDefaults prices a job with a shop's own figures: 6.5 h at 120 with
// 15 % reserve, 240 of materials with 30 %, and 8 % tax make 1305.72 (by
// hand: (897 + 312) × 1.08), in the currency of the rate.
func TestWithDefaults(t *testing.T) {
	own, problems := shop.JobPrice.WithDefaults([]calc.Pair{
		{Key: "rate", Value: "$120"}, {Key: "markup", Value: "30%"}, {Key: "contingency", Value: "15%"}, {Key: "tax", Value: "8%"},
	}, "this shop's")
	if len(problems) > 0 {
		t.Fatal(problems[0])
	}
	pairs := pairsOf(t, "hours=6.5&materials=240")
	for _, test := range []struct {
		c     *calc.Calculator
		pairs []calc.Pair
	}{{own, pairs}, {shop.JobPrice, own.Explicit(pairs)}} {
		_, r, problems := test.c.Answer(test.pairs)
		if r == nil {
			t.Fatal(problems[0])
		}
		total := test.c.Output("total")
		if shown := test.c.Outputs[total].Format(r.Outputs[total]); shown != "$1305.72" {
			t.Errorf("the job costs %s, want $1305.72", shown)
		}
	}
	if !strings.Contains(own.Input("rate").Help, "this shop's $120") {
		t.Errorf("the help does not say whose rate it is: %s", own.Input("rate").Help)
	}
	if shop.JobPrice.Input("rate").Default != "95" {
		t.Error("the calculator itself has changed")
	}
	for _, bad := range []calc.Pair{{Key: "rate", Value: "much"}, {Key: "hourly", Value: "95"}} {
		if c, problems := shop.JobPrice.WithDefaults([]calc.Pair{bad}, ""); len(problems) == 0 || c != shop.JobPrice {
			t.Errorf("%s=%s is taken", bad.Key, bad.Value)
		}
	}
	if _, r, _ := shop.JobPrice.Answer(pairsOf(t, "rate=$95&materials=€10")); r != nil {
		t.Error("prices in two currencies are added up")
	}
}
