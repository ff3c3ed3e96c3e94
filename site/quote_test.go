package site_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site"
	"baybook/site/core"
	"baybook/site/render"
)

// TestQuote adds the shipped job up by hand: 37 h at 95 with 15 % on top, parts
// of 1460 with 30 %, no tax.
func TestQuote(t *testing.T) {
	out := filepath.Join(t.TempDir(), "dist")
	if _, list, err := site.Build(t.Context(), site.Options{
		Content: filepath.Join("..", "content"), Out: out, Core: core.Core{Module: []byte("\x00asm"), Script: []byte(";")},
	}); err != nil {
		t.Fatal(err, list)
	}
	data, err := os.ReadFile(filepath.Join(out, "jobs", "bookmobile-quote.json"))
	if err != nil {
		t.Fatal(err)
	}
	var q render.Quote
	if err := json.Unmarshal(data, &q); err != nil {
		t.Fatal(err)
	}
	amounts := make(map[string]string)
	for _, l := range q.Price {
		amounts[l.Name] = l.Amount
	}
	for name, want := range map[string]string{"Labor": "4042.25", "Parts": "1898.00", "Before tax": "5940.25", "Tax": "0.00", "Total": "5940.25"} {
		if amounts[name] != want {
			t.Errorf("%s is %s, want %s", name, amounts[name], want)
		}
	}
	if len(q.Work) != 40 || q.Customer == "" || q.Vehicle == "" || q.Order == "" || q.Until <= q.Date {
		t.Errorf("the quote lacks something: %+v", q)
	}
	page, err := os.ReadFile(filepath.Join(out, "jobs", "bookmobile-quote.html"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"5940.25", "Valid until", q.Until, "Not included", "restraint specialist", "Customer, date"} {
		if !strings.Contains(string(page), want) {
			t.Errorf("the page lacks %q", want)
		}
	}
}
