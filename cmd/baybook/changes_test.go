package main

import (
	"path/filepath"
	"strings"
	"testing"
)

// TestChanges reads what sheets went through, with messages that hide
// characters and titles in quotes.
func TestChanges(t *testing.T) {
	f := newFolder(t)
	f.write("book/a.md", "---\ntitle: A\nrevision: \"B\" # the second\ndate: 2026-01-05\n---\nrevision: Z\n")
	f.write("book/b.md", strings.Repeat("no title block\n", 2000))
	f.git("add", "-A")
	f.git("commit", "-q", "-m", "Torque \u202ewritten <b>down</b>\n\nBecause.")
	f.git("rm", "-q", "book/b.md")
	f.git("commit", "-q", "-m", "b is gone")
	f.git("commit", "-q", "--allow-empty", "-m", "nothing of the book")
	book := filepath.Join(f.dir, "book")
	h := historyForPages(t.Context(), book)()
	a := h.Changes["a.md"]
	if len(a) != 2 {
		t.Fatalf("a.md has two changes, not %+v", a)
	}
	if c := a[0]; c.Revision != "B" || c.Date != "2026-01-05" || c.What != "Torque written <b>down</b>" || c.Day.IsZero() || c.Number >= a[1].Number {
		t.Errorf("the newest change is %+v", c)
	}
	if c := a[1]; c.Revision != "A" || c.What != "first" {
		t.Errorf("the first change is %+v", c)
	}
	if b := h.Changes["b.md"]; len(b) != 1 || b[0].Revision != "" {
		t.Errorf("b.md was recorded once, without a title block: %+v", b)
	}
	if got := changesForPages(t.Context(), book)(); got.Sheets != nil || len(got.Changes["a.md"]) != 2 || got.Today.IsZero() {
		t.Errorf("pages alone: %+v", got)
	}
	clone := filepath.Join(t.TempDir(), "clone")
	f.git("clone", "-q", "--depth", "1", "file://"+f.dir, clone)
	if got := historyForPages(t.Context(), filepath.Join(clone, "book"))().Changes; len(got) != 0 {
		t.Errorf("where a clone was cut off nothing is known, but %+v", got)
	}
}
