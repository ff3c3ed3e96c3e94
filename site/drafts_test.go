package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"baybook/site"
	"baybook/site/finding"
	"baybook/site/sitetest"
)

// A draft is checked and shown, stops nothing, and is in no published book.
func TestDraftsAreShownAndNotPublished(t *testing.T) {
	dir := t.TempDir()
	if err := sitetest.Write(dir, 3); err != nil {
		t.Fatal(err)
	}
	const name = "area-000/lead-00001"
	file := filepath.Join(dir, name+".md")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	faulty := strings.Replace(string(text), "\n---\n", "\ndraft: true\nhazard: [none]\n---\n", 1)
	if err := os.WriteFile(file, []byte(faulty), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, drafts := range []bool{true, false} {
		edition, list, err := site.NewBuilder(site.Options{Content: dir, Core: testCore, Drafts: drafts}).Next(t.Context())
		if err != nil {
			t.Fatalf("a draft stops the book: %v", err)
		}
		faults := 0
		for _, f := range list {
			if f.Severity == finding.Error {
				t.Errorf("an error: %s: %s", f.Pos, f.Message)
			}
			if f.Pos.File == name+".md" {
				faults++
			}
		}
		if faults == 0 {
			t.Error("the draft is not checked")
		}
		page, err := edition.Open(name + ".html")
		if shown := err == nil; shown != drafts {
			t.Errorf("with drafts %v, the page is shown: %v", drafts, shown)
		}
		if drafts && !strings.Contains(string(page.Data()), "DRAFT") {
			t.Error("the page of a draft does not say that it is one")
		}
		for _, list := range []string{"index.html", "a-z.html", "area-000/lead-00000.html", "area-000/lead-00002.html"} {
			page, err := edition.Open(list)
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(string(page.Data()), "lead-00001.html") != drafts && !(drafts && strings.HasPrefix(list, "area")) {
				t.Errorf("with drafts %v, %s leads to the draft: %v", drafts, list, !drafts)
			}
		}
	}
}
