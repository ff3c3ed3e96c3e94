package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site"
	"baybook/site/core"
	"baybook/site/find"
)

// A question is what somebody types, and the pages that answer it.
type question struct {
	text  string
	wants []string
}

// questions reads lines of a question and the pages that it wants, parted by a
// tab; pages by a bar. They are in the words of apprentices and techs, written
// before the search was tuned; held.tsv was never looked at for tuning.
func questions(t *testing.T, name string) []question {
	t.Helper()
	text, err := os.ReadFile(filepath.Join("..", "testdata", "find", name))
	if err != nil {
		t.Fatal(err)
	}
	var list []question
	for line := range strings.Lines(string(text)) {
		q, pages, ok := strings.Cut(strings.TrimSpace(line), "\t")
		if !ok {
			t.Fatalf("%s: no page for %q", name, line)
		}
		list = append(list, question{q, strings.Split(pages, "|")})
	}
	return list
}

// place is where the first page that answers a question stands among the
// answers, counted by pages, from 1; 0 where it is not among them.
func (q question) place(index *find.Index) int {
	var seen []string
	for _, hit := range index.Find(q.text, 12) {
		page, _, _ := strings.Cut(hit.Address, "#")
		page = strings.TrimSuffix(page, ".html")
		known := false
		for _, s := range seen {
			known = known || s == page
		}
		if known {
			continue
		}
		seen = append(seen, page)
		for _, want := range q.wants {
			if page == want {
				return len(seen)
			}
		}
	}
	return 0
}

// TestQuestionsFindTheirPage asks the shipped book two hundred questions of the
// bay.
func TestQuestionsFindTheirPage(t *testing.T) {
	out := filepath.Join(t.TempDir(), "dist")
	if _, list, err := site.Build(t.Context(), site.Options{
		Content: filepath.Join("..", "content"), Out: out, Core: core.Core{Module: []byte("\x00asm"), Script: []byte(";")},
	}); err != nil {
		t.Fatal(err, list)
	}
	data, err := os.ReadFile(filepath.Join(out, "assets", "find.bin"))
	if err != nil {
		t.Fatal(err)
	}
	index, err := find.Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range []struct {
		name         string
		first, three float64 // the least share of questions whose page comes first, and among the first three
	}{{"tune.tsv", 0.75, 0.95}, {"held.tsv", 0.75, 0.95}} {
		first, three := 0, 0
		list := questions(t, set.name)
		for _, q := range list {
			n := q.place(index)
			if n == 1 {
				first++
			}
			if n >= 1 && n <= 3 {
				three++
			}
			if (n == 0 || n > 3) && set.name == "tune.tsv" {
				t.Logf("%q: %d %v", q.text, n, firstPages(index, q.text))
			}
		}
		a, b := float64(first)/float64(len(list)), float64(three)/float64(len(list))
		t.Logf("%s: of %d questions %.2f have their page first, %.2f among the first three", set.name, len(list), a, b)
		if a < set.first || b < set.three {
			t.Errorf("%s: under %.2f first or %.2f among three", set.name, set.first, set.three)
		}
	}
}

// firstPages are the addresses of the first answers, for the log.
func firstPages(index *find.Index, text string) (list []string) {
	for _, hit := range index.Find(text, 3) {
		list = append(list, hit.Address)
	}
	return list
}
