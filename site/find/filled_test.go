package find

import "testing"

// TestValuesFillInACalculator types values as a tech does who wants a wire.
func TestValuesFillInACalculator(t *testing.T) {
	docs := testDocs()
	for _, name := range []string{"feed-plan", "battery-run", "gain-voltage"} {
		docs = append(docs, Doc{Sheet: -1, Kind: Calculator, Title: name, Address: "calculators/" + name + ".html"})
	}
	x := Build(docs, testSynonyms)
	for query, want := range map[string]string{
		"12A 5m":               "calculators/feed-plan.html#calculator-1?current=12A&length=5m",
		"12 amps 5 metres":     "calculators/feed-plan.html#calculator-1?current=12A&length=5m",
		"which wire 7.5A 16ft": "calculators/feed-plan.html#calculator-1?current=7.5A&length=16ft",
		"10A 14 AWG":           "calculators/fuse-size.html#calculator-1?load=10A&wire=14AWG",
		"95Ah 5A":              "calculators/battery-run.html#calculator-1?capacity=95Ah&load=5A",
		"75 W 4 ohm":           "calculators/gain-voltage.html#calculator-1?power=75W&load=4ohm",
	} {
		hits := x.Find(query, 3)
		if len(hits) == 0 || hits[0].Address != want || hits[0].Kind != Calculator {
			t.Errorf("%q: %+v, want first %s", query, hits, want)
		}
	}
	for _, query := range []string{"12 V trigger", "5 mm pilot hole", "a fuse", "12A", "M6 torque"} {
		if address, doc := x.filled(query); doc >= 0 {
			t.Errorf("%q fills in %s", query, address)
		}
	}
}
