package shop_test

import (
	"testing"

	"baybook/calculators/calc"
	"baybook/calculators/shop"
)

// TestCents adds the parts of a price in whole cents: what is shown adds up
// to the last one.
func TestCents(t *testing.T) {
	pairs, _ := calc.ParseQuery("hours=2.5&rate=88&contingency=15%25&materials=341.20&markup=25%25&tax=8.25%25")
	_, r, problems := shop.JobPrice.Answer(pairs)
	if r == nil {
		t.Fatal(problems[0])
	}
	const labour = 250 * 88 * 115 / 100 // cents
	const parts = 34120 * 125 / 100
	for name, cents := range map[string]float64{"labour": labour, "parts": parts, "before_tax": labour + parts, "total": (labour + parts) * 1.0825} {
		if got := 100 * r.Num(name); calc.Over(got, cents) || calc.Under(got, cents) {
			t.Errorf("%s is %.4f cents, want %.4f", name, got, cents)
		}
	}
	o := &shop.JobPrice.Outputs[shop.JobPrice.Output("total")]
	if shown := o.Format(r.Get("total")); shown != "735.56" {
		t.Errorf("total is shown as %s", shown)
	}
}
