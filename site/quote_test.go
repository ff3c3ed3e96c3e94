package site_test

import (
	"encoding/json"
	"html"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site"
	"baybook/site/begin"
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

// ownJob is a job of a begun book whose price takes all but the hours and the
// materials from the shop.
const ownJob = `---
title: Van of the library
number: JB-02
revision: A
date: 2026-11-20
owner: Front desk
kind: job
minutes: 20
skill: lead
customer: County library (invented)
vehicle: Step van (invented)
order: One lead (invented)
---
One job (invented).

## Work

1. [Fused lead](../power/fused-lead.md)

## What it costs

The estimate is [EUR 1305.72](calc:job-price?hours=6.5&materials=240RATE#total).

## Not in this price

- Rust (invented).

## Sources

- Common practice, no source.
`

// TestQuoteOfTheShop adds up by hand: 6.5 h at 120 with 15 % on top are 897, parts
// of 240 with 30 % are 312, and 8 % of 1209 are 96.72. The currency is the
// shop's, whether the job names the rate or not.
func TestQuoteOfTheShop(t *testing.T) {
	for rate, said := range map[string]string{"": "EUR 1305.72", "&rate=120": "1305.72"} {
		dir := filepath.Join(t.TempDir(), "book")
		if err := os.CopyFS(dir, begin.Book()); err != nil {
			t.Fatal(err)
		}
		for name, text := range map[string]string{
			"shop.yaml":   "name: The bay\nbook: Its book\nlanguage: en-GB\npostal: 1 Yard Road\nphone: on the door\nrate: \"120\"\ncurrency: EUR\nmarkup: 30%\ncontingency: 15%\ntax: 8%\nquote_days: 10\n",
			"jobs/van.md": strings.NewReplacer("RATE", rate, "EUR 1305.72", said).Replace(ownJob),
		} {
			file := filepath.Join(dir, filepath.FromSlash(name))
			if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		edition, list, err := site.NewBuilder(site.Options{Content: dir, Core: testCore}).Next(t.Context())
		if err != nil {
			t.Fatal(err, list)
		}
		page, err := edition.Open("jobs/van-quote.html")
		if err != nil {
			t.Fatal(err)
		}
		text := html.UnescapeString(string(page.Data()))
		for _, want := range []string{"1 Yard Road", "on the door", "County library (invented)", "Step van (invented)", "One lead (invented)", "20 Nov 2026", "30 Nov 2026", "Labour", "EUR\u00a0897.00", "EUR\u00a0312.00", "EUR\u00a01,209.00", "EUR\u00a096.72", "EUR\u00a01,305.72", "Rust (invented)"} {
			if !strings.Contains(text, want) {
				t.Errorf("with %q the quote lacks %q", rate, want)
			}
		}
		job, err := edition.Open("jobs/van.html")
		if err != nil {
			t.Fatal(err)
		}
		for _, want := range []string{"Step van (invented)", "One lead (invented)", "van-quote.html", "Not approved: 1 of these sheets."} {
			if !strings.Contains(string(job.Data()), want) {
				t.Errorf("the job's page lacks %q", want)
			}
		}
	}
}
