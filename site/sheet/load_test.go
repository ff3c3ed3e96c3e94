package sheet_test

import (
	"fmt"
	"io/fs"
	"testing"
	"testing/fstest"
	"time"

	"baybook/calculators"
	"baybook/site/sheet"
)

// folder is a book of three sheets, a drawing and the data files, all written
// long ago.
func folder() fstest.MapFS {
	old := time.Date(2026, 1, 2, 3, 4, 5, 0, time.UTC)
	files := fstest.MapFS{}
	for name, text := range map[string]string{
		"hazards.yaml":  "[]\n",
		"glossary.yaml": "- term: ground\n  also: [earth]\n",
		"shop.yaml":     "name: County library\nbook: Bay book\n",
		"a/one.md":      "---\ntitle: One\nnumber: A-01\n---\nFirst.\n",
		"a/two.md":      "---\ntitle: Two\nnumber: A-02\n---\nSecond.\n",
		"b/three.md":    "---\ntitle: Three\nnumber: A-01\n---\nThird.\n",
		"a/one.svg":     `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1"/>`,
	} {
		files[name] = &fstest.MapFile{Data: []byte(text), ModTime: old}
	}
	return files
}

// save writes a file as an editor does: new text, new time.
func save(files fstest.MapFS, name, text string, at time.Time) {
	files[name] = &fstest.MapFile{Data: []byte(text), ModTime: at}
}

func load(t *testing.T, previous *sheet.Book, files fs.FS) (*sheet.Book, string) {
	t.Helper()
	book, list, err := sheet.Reload(previous, files, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	return book, fmt.Sprint(list.Dedupe())
}

func TestReloadTakesOverWhatIsTheSame(t *testing.T) {
	files := folder()
	first, _ := load(t, nil, files)
	save(files, "a/two.md", "---\ntitle: Two\nnumber: A-03\n---\nAnother.\n", time.Date(2026, 2, 2, 0, 0, 0, 0, time.UTC))
	second, found := load(t, first, files)
	for _, path := range []string{"a/one", "b/three"} {
		if first.Sheet(path) != second.Sheet(path) {
			t.Errorf("%s was read again, although it is the same", path)
		}
	}
	if first.Sheet("a/two") == second.Sheet("a/two") || second.Sheet("a/two").Front.Number != "A-03" {
		t.Error("a/two was not read again")
	}
	if first.Register != second.Register || first.Glossary != second.Glossary || first.Shop != second.Shop {
		t.Error("a data file was read again, although it is the same")
	}
	if first.Drawings["a/one.svg"] != second.Drawings["a/one.svg"] {
		t.Error("the drawing was read again, although it is the same")
	}
	if second.Numbered("A-02") != nil || first.Numbered("A-02") == nil {
		t.Error("the numbers of one reading leaked into the other")
	}
	if _, fresh := load(t, nil, files); fresh != found {
		t.Errorf("findings differ from those of a first reading:\n%s\n%s", found, fresh)
	}
}

// A file saved twice within the resolution of the file system's clock has the
// same time and may have the same size.
func TestReloadIsNotFooledByCoarseClocks(t *testing.T) {
	for name, at := range map[string]time.Time{"now": time.Now(), "no time at all": {}} {
		t.Run(name, func(t *testing.T) {
			files := folder()
			save(files, "a/one.md", "---\ntitle: One\n---\nabc\n", at)
			first, _ := load(t, nil, files)
			save(files, "a/one.md", "---\ntitle: Two\n---\nabc\n", at)
			second, _ := load(t, first, files)
			if got := second.Sheet("a/one").Front.Title; got != "Two" {
				t.Errorf("title %q, want Two", got)
			}
			third, _ := load(t, second, files)
			if third.Sheet("a/one") != second.Sheet("a/one") {
				t.Error("the same text was parsed again")
			}
		})
	}
}

func TestReloadForgetsWhatIsGone(t *testing.T) {
	files := folder()
	first, _ := load(t, nil, files)
	delete(files, "a/one.md")
	delete(files, "a/one.svg")
	delete(files, "glossary.yaml")
	second, found := load(t, first, files)
	if second.Sheet("a/one") != nil || second.Drawings["a/one.svg"] != nil || len(second.Glossary.Terms) != 0 {
		t.Error("a deleted file is still there")
	}
	if s := second.Numbered("A-01"); s == nil || s.Path != "b/three" {
		t.Error("the number is not free for the sheet that is left")
	}
	if _, fresh := load(t, nil, files); fresh != found {
		t.Errorf("findings differ from those of a first reading:\n%s\n%s", found, fresh)
	}
}
