package rule

import (
	"baybook/site/check"
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"baybook/site/finding"
	"baybook/site/sheet"

	"github.com/rogpeppe/go-internal/txtar"
)

// A wanted is a finding that a book of testdata expects. Line 0 is a file as a
// whole.
type wanted struct {
	file string
	line int
	rule string
	text *regexp.Regexp
}

// newWanted reads an expectation: the whole name of a rule, and behind it a
// regular expression that goes on from there.
func newWanted(t testing.TB, file string, line int, text string) wanted {
	re, err := regexp.Compile("^" + text)
	if err != nil {
		t.Fatal(err)
	}
	return wanted{file, line, ruleName.FindString(strings.TrimPrefix(text, "^")), re}
}

var ruleName = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*`)

// whenLines are what a row of the register says of the work that brings it.
var whenLines = regexp.MustCompile(`(?m)^  when:\n(    - .*\n)+`)

var wantComment = regexp.MustCompile(` ?<!-- want "([^"]*)" -->`)

// readBook reads a book of testdata. What is expected stands beside the
// mistake in a comment, which is blanked out before the sheet is read so that
// no rule reads it, or in the file "want": path:line and a regular expression
// over "rule: message; do". Data files that the book leaves out are the shipped
// ones.
func readBook(t testing.TB, name string) (fstest.MapFS, []wanted) {
	t.Helper()
	archive, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if len(bytes.TrimSpace(archive.Comment)) == 0 {
		t.Errorf("%s does not say what it shows", name)
	}
	fsys := fstest.MapFS{}
	for _, data := range [...]string{sheet.RegisterFile, sheet.GlossaryFile, sheet.WordsFile, sheet.ShopFile} {
		content, err := os.ReadFile(filepath.Join("../../../content", data))
		if err != nil {
			t.Fatal(err)
		}
		if data == sheet.RegisterFile {
			content = whenLines.ReplaceAll(content, nil) // these books have no lists of work, or their own
		}
		fsys[data] = &fstest.MapFile{Data: content}
	}
	var wants []wanted
	for _, f := range archive.Files {
		if f.Name == "want" {
			wants = append(wants, listedWants(t, string(f.Data))...)
			continue
		}
		text := f.Data
		if filepath.Ext(f.Name) == ".md" {
			var found []wanted
			text, found = besideWants(t, f.Name, text)
			wants = append(wants, found...)
		}
		fsys[f.Name] = &fstest.MapFile{Data: text}
	}
	return fsys, wants
}

// besideWants takes the expectations out of a sheet's text.
func besideWants(t testing.TB, file string, text []byte) ([]byte, []wanted) {
	var wants []wanted
	out := bytes.Clone(text)
	for _, m := range wantComment.FindAllSubmatchIndex(text, -1) {
		line := 1 + bytes.Count(text[:m[0]], []byte("\n"))
		wants = append(wants, newWanted(t, file, line, string(text[m[2]:m[3]])))
		for i := m[0]; i < m[1]; i++ {
			out[i] = ' '
		}
	}
	return out, wants
}

func listedWants(t testing.TB, list string) []wanted {
	var wants []wanted
	for entry := range strings.Lines(list) {
		place, text, ok := strings.Cut(strings.TrimSpace(entry), " ")
		if !ok {
			continue
		}
		file, number, _ := strings.Cut(place, ":")
		line, _ := strconv.Atoi(number)
		wants = append(wants, newWanted(t, file, line, text))
	}
	return wants
}

// compareWants compares findings with expectations both ways.
func compareWants(t *testing.T, list finding.List, wants []wanted) {
	t.Helper()
	met := make([]bool, len(wants))
next:
	for _, f := range list {
		text := f.Rule + ": " + f.Message + "; " + f.Do
		for i, w := range wants {
			if !met[i] && w.rule == f.Rule && w.file == f.Pos.File && (w.line == 0 || w.line == f.Pos.Line) && w.text.MatchString(text) {
				met[i] = true
				continue next
			}
		}
		t.Errorf("%s: nobody expects this: %s", f.Pos, text)
	}
	for i, w := range wants {
		if !met[i] {
			t.Errorf("%s:%d: nothing found that matches %s", w.file, w.line, w.text)
		}
	}
}

// TestRefusedBooks compares every book of testdata/refused with the findings
// that it names, no more and no less.
func TestRefusedBooks(t *testing.T) {
	names, _ := filepath.Glob("../../../testdata/refused/*.txtar")
	if len(names) < 40 {
		t.Fatalf("%d books are there", len(names))
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			fsys, wants := readBook(t, name)
			if len(wants) == 0 {
				t.Fatal("the book expects nothing")
			}
			compareWants(t, checkFS(t, fsys, check.History{Today: today}), wants)
		})
	}
}

// TestAcceptedBooks demands that the books of testdata/accepted have no
// finding, not even a warning.
func TestAcceptedBooks(t *testing.T) {
	names, _ := filepath.Glob("../../../testdata/accepted/*.txtar")
	if len(names) < 10 {
		t.Fatalf("%d books are there", len(names))
	}
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			fsys, wants := readBook(t, name)
			if len(wants) > 0 {
				t.Fatal("an accepted book expects nothing")
			}
			compareWants(t, checkFS(t, fsys, check.History{Today: today}), nil)
		})
	}
}

// TestRulesHaveBooks demands a refused book for every rule beside its example.
func TestRulesHaveBooks(t *testing.T) {
	names, _ := filepath.Glob("../../../testdata/refused/*.txtar")
	shown := map[string]bool{"revision-date": true, "unused-figure": true} // history_test.go, examples_test.go
	for _, name := range names {
		_, wants := readBook(t, name)
		for _, w := range wants {
			shown[w.rule] = true
		}
	}
	for _, r := range Checks {
		if !shown[r.Name] && !strings.HasPrefix(r.Name, "circuit-") { // drawings have books of their own
			t.Errorf("no refused book shows %s", r.Name)
		}
	}
}
