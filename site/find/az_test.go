package find

import (
	"slices"
	"strings"
	"testing"
)

func TestAZ(t *testing.T) {
	docs := []Doc{
		{Kind: Sheet, Title: "Ground point", Number: "GR-02", Address: "g.html", Words: []string{"earth point", "chassis return", "ground point"}},
		{Kind: Step, Title: "Ground point", Address: "g.html#step-1"},
		{Kind: Section, Title: "Prove it", Address: "g.html#prove-it"},
		{Kind: Calculator, Title: "éclair size", Address: "e.html"},
		{Kind: Sheet, Title: "12 V feed", Number: "PO-01", Address: "12.html"},
		{Kind: Sheet, Title: "①", Address: "no-word.html"},
		{Kind: Sheet, Title: "٣ arabic digit", Address: "digit.html"},
		{Kind: Sheet, Title: "Я", Address: "ya.html"},
	}
	var got []string
	for _, l := range AZ(docs) {
		line := l.Name + ":"
		for _, e := range l.Entries {
			line += " " + e.Text + " (" + e.Address + ")"
		}
		got = append(got, line)
	}
	want := []string{
		"0–9: 12 V feed (12.html) ٣ arabic digit (digit.html)",
		"C: chassis return (g.html)",
		"E: earth point (g.html) éclair size (e.html)",
		"G: Ground point (g.html)",
		"Я: Я (ya.html)",
	}
	if !slices.Equal(got, want) {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

func TestAZHoldsEverySheetAndCalculator(t *testing.T) {
	listed := map[string]bool{}
	seen := map[string]bool{}
	for _, l := range AZ(testDocs()) {
		if seen[l.Name] {
			t.Errorf("letter %s twice", l.Name)
		}
		seen[l.Name] = true
		for _, e := range l.Entries {
			if e.Text == e.Title {
				listed[e.Address] = true
			}
		}
	}
	for _, d := range testDocs() {
		if wanted := d.Kind == Sheet || d.Kind == Calculator; listed[d.Address] != wanted {
			t.Errorf("%s listed: %v", d.Address, !wanted)
		}
	}
}
