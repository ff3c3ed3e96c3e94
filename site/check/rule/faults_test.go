package rule

import (
	"bytes"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"baybook/calculators"
	"baybook/site/check"
	"baybook/site/sheet"

	"github.com/rogpeppe/go-internal/txtar"
)

// faultHead are the two lines that a fault says where it is seeded and which
// rules catch it by.
var faultHead = regexp.MustCompile(`^file: (\S+)\nrules?: ([a-z, -]+)\n$`)

// A fault is something wrong that is put into the shipped book: a stretch of a
// file and what takes its place.
type fault struct {
	file          string
	rules         []string
	before, after []byte
}

func readFault(t *testing.T, name string) fault {
	t.Helper()
	archive, err := txtar.ParseFile(name)
	if err != nil {
		t.Fatal(err)
	}
	part := func(want string) []byte {
		for _, f := range archive.Files {
			if f.Name == want {
				return f.Data
			}
		}
		t.Fatalf("%s has no part %q", name, want)
		return nil
	}
	m := faultHead.FindSubmatch(part("fault"))
	if m == nil {
		t.Fatalf("%s: the part fault needs the lines file: path and rule: name", name)
	}
	return fault{
		file: string(m[1]), rules: strings.Split(strings.ReplaceAll(string(m[2]), " ", ""), ","),
		before: bytes.TrimSuffix(part("before"), []byte("\n")), after: bytes.TrimSuffix(part("after"), []byte("\n")),
	}
}

// TestFaultsInTheShippedBook puts each fault of testdata/faults into the shipped book
// and demands a finding that was not there before, of one of the rules that
// the fault names, in the file that it was put into.
func TestFaultsInTheShippedBook(t *testing.T) {
	names, err := filepath.Glob("../../../testdata/faults/*.txtar")
	if err != nil || len(names) == 0 {
		t.Fatalf("no faults are there: %v", err)
	}
	files := shippedFiles(t)
	cache := check.NewCache(Checks)
	day := check.History{Today: time.Date(2026, 12, 1, 0, 0, 0, 0, time.UTC)}
	sound, _, err := sheet.Load(files, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	known := make(map[string]bool)
	for _, f := range cache.Run(sound, day) {
		known[f.Rule+f.Pos.File+f.Message] = true
	}
	caught := 0
	for _, name := range names {
		t.Run(strings.TrimSuffix(filepath.Base(name), ".txtar"), func(t *testing.T) {
			x := readFault(t, name)
			was := files[x.file]
			if was == nil || bytes.Count(was.Data, x.before) != 1 {
				t.Fatalf("the text that the fault replaces does not stand once in %s", x.file)
			}
			files[x.file] = &fstest.MapFile{Data: bytes.Replace(was.Data, x.before, x.after, 1)}
			defer func() { files[x.file] = was }()
			book, list, err := sheet.Reload(sound, files, calculators.All)
			if err != nil {
				t.Fatal(err)
			}
			for _, f := range append(list, cache.Run(book, day)...) {
				if f.Pos.File == x.file && slices.Contains(x.rules, f.Rule) && !known[f.Rule+f.Pos.File+f.Message] {
					caught++
					return
				}
			}
			t.Errorf("none of %s finds it", strings.Join(x.rules, ", "))
		})
	}
	t.Logf("%d of %d seeded faults are caught", caught, len(names))
}

// shippedFiles is the shipped book in memory.
func shippedFiles(t *testing.T) fstest.MapFS {
	t.Helper()
	files := make(fstest.MapFS)
	content := os.DirFS("../../../content")
	err := fs.WalkDir(content, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(content, name)
		files[name] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}
