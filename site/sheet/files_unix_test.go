//go:build unix

package sheet_test

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"baybook/calculators"
	"baybook/site/sheet"
)

// A pipe has no end to read to, and what a link points at is not the book's:
// both are refused unread, for sheets, drawings and registers alike.
func TestPipesAndLinksAreRefusedUnread(t *testing.T) {
	dir := t.TempDir()
	pipes := []string{"hazards.yaml", "limits.yaml", "a.md", "b.svg"}
	for _, name := range pipes {
		if err := syscall.Mkfifo(filepath.Join(dir, name), 0o644); err != nil {
			t.Skip("this system makes no pipes")
		}
	}
	secret := filepath.Join(t.TempDir(), "secret")
	if err := os.WriteFile(secret, []byte("- term: token-of-another\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(secret, filepath.Join(dir, "glossary.yaml")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "shop.yaml"), []byte("name: Bay\nbook: Book\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	book, list, err := sheet.Load(os.DirFS(dir), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range append(pipes, "glossary.yaml") {
		n := 0
		for _, f := range list {
			if f.Pos.File == name {
				n++
			}
			if strings.Contains(f.Line+f.Message, "token-of-another") {
				t.Errorf("%s is quoted", secret)
			}
		}
		if n != 1 {
			t.Errorf("%s has %d findings, want 1", name, n)
		}
	}
	if len(book.Glossary.Terms) != 0 || len(book.Sheets) != 0 {
		t.Error("a pipe or a link was read")
	}
}
