package site_test

import (
	"bytes"
	"html"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"baybook/site"
	"baybook/site/sitetest"
)

// newsBook builds a book of three sheets, one of which has a history.
func newsBook(t *testing.T) func(name string) string {
	t.Helper()
	dir := t.TempDir()
	if err := sitetest.Write(dir, 3); err != nil {
		t.Fatal(err)
	}
	day := func(d int) time.Time { return time.Date(2026, 1, d, 0, 0, 0, 0, time.UTC) }
	changes := map[string][]site.Change{"area-000/lead-00001.md": {
		{Revision: "C", Date: "2026-01-04", Day: day(9), What: "The last is first"},
		{Revision: "B", Date: "2026-01-03", Day: day(8), What: "One <b>", Number: 1},
		{Revision: "B", Date: "2026-01-03", Day: day(8), What: "Two", Number: 2},
		{Revision: "B", Date: "2026-01-03", Day: day(7), What: "Two", Number: 3},
		{Revision: "B", Date: "2026-01-03", Day: day(7), What: "Three", Number: 4},
		{Revision: "B", Date: "2026-01-03", Day: day(7), What: "Four", Number: 5},
		{Revision: "", Day: day(6), What: "Before there was a title block", Number: 6},
	}}
	edition, list, err := site.NewBuilder(site.Options{Content: filepath.Clean(dir), Core: testCore, History: func() site.History {
		return site.History{Today: day(365), Changes: changes}
	}}).Next(t.Context())
	if err != nil {
		t.Fatal(err, list)
	}
	return func(name string) string {
		file, err := edition.Open(name)
		if err != nil {
			t.Fatal(err)
		}
		if again, err := edition.Open(name); err != nil || !bytes.Equal(again.Data(), file.Data()) {
			t.Errorf("%s is not the same twice", name)
		}
		return html.UnescapeString(string(file.Data()))
	}
}

// inOrder demands texts one behind the other.
func inOrder(t *testing.T, page string, texts ...string) {
	t.Helper()
	for _, want := range texts {
		_, rest, ok := strings.Cut(page, want)
		if !ok {
			t.Fatalf("%q is not there, or not in its place", want)
		}
		page = rest
	}
}

// TestNews looks for a sheet's issues on its page and on the pages of the book.
func TestNews(t *testing.T) {
	open := newsBook(t)
	sheet := open("area-000/lead-00001.html")
	inOrder(t, sheet, "Rev. A, 2026-11-25", "Rev. C, 2026-01-04: The last is first", "issues.html#")
	if strings.Contains(sheet, "Two") || strings.Contains(open("area-000/lead-00000.html"), "issues.html#") {
		t.Error("a page lists more than its newest issues")
	}
	issues := open("issues.html")
	inOrder(t, issues, "Rev. A", "not recorded yet", "Rev. C", "The last is first", "Rev. B", "One <b>", "Two", "Three", "and 1 more")
	if strings.Contains(issues, "Four") || strings.Contains(issues, "Before there was") || strings.Contains(issues, "lead-00000.html") {
		t.Error("the page of issues lists what it should not")
	}
	inOrder(t, open("news.html"), "2026-01-09", "The last is first", "lead-00001.html", "2026-01-08", "One <b>", "Two", "2026-01-07", "Two", "Three", "Four", "2026-01-06", "Before there was")
	inOrder(t, open("index.html"), "news.html")
}
