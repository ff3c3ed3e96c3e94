package sheet_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"baybook/calculators"
	"baybook/calculators/calc"
	"baybook/site/sheet"
)

// TestShopPrices: job-price starts from the shop's figures, in its currency;
// what cannot be read is told at its line.
func TestShopPrices(t *testing.T) {
	load := func(lines string) (*calc.Calculator, string) {
		fsys := fstest.MapFS{"shop.yaml": {Data: []byte("name: County library\nbook: Bay book\n" + lines)}}
		shop, list, err := sheet.LoadShop(fsys)
		if err != nil {
			t.Fatal(err)
		}
		said := ""
		for _, f := range list {
			said += f.Message + "\n"
		}
		for _, c := range shop.Calculators(calculators.All) {
			if c.Name == "job-price" {
				return c, said
			}
		}
		t.Fatal("job-price is lost")
		return nil, ""
	}
	for lines, want := range map[string]string{
		"rate: \"120\"\n":                         "$120",
		"rate: \"$120\"\n":                        "$120",
		"rate: \"120\"\ncurrency: \"$\"\n":        "$120",
		"rate: \"120\"\ncurrency: CHF\ntax: 8%\n": "CHF 120",
	} {
		c, said := load(lines)
		pairs, _ := calc.ParseQuery("hours=1&materials=0&contingency=0&tax=0")
		_, r, _ := c.Answer(pairs)
		total := c.Output("total")
		want += ".00"
		if !strings.Contains(lines, "$") && !strings.Contains(lines, "CHF") {
			want = strings.TrimPrefix(want, "$") // no currency was given
		}
		if got := c.Outputs[total].Format(r.Outputs[total]); said != "" || got != want {
			t.Errorf("%q: an hour costs %s, want %s; %s", lines, got, want, said)
		}
	}
	for lines, want := range map[string]string{
		"rate: much\n": "not a number", "tax: 90%\n": "outside", "markup: 3 h\n": "is a time", "currency: bucks\n": "not a currency",
	} {
		if _, said := load(lines); !strings.Contains(said, want) {
			t.Errorf("%q: found %q, want it to say %q", lines, said, want)
		}
	}
}
