package check

import (
	"io/fs"
	"os"
	"slices"
	"testing"
	"testing/fstest"

	"baybook/calculators"
	"baybook/site/check/work"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// TestCertainWorkChangesNothing writes the certain links into every sheet of
// the shipped book and demands that each step does what it did before.
func TestCertainWorkChangesNothing(t *testing.T) {
	content := os.DirFS("../../content")
	files := make(fstest.MapFS)
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
	before := shippedBook(t)
	shared, written := newBookFacts(nil, before), 0
	for _, s := range before.Sheets {
		list := shared.factsOf(s).certainWork()
		written += len(list)
		after, err := finding.Apply(files[s.File].Data, list.Fixes(s.File))
		if err != nil {
			t.Fatal(err)
		}
		files[s.File] = &fstest.MapFile{Data: after}
	}
	if written == 0 {
		t.Fatal("no link is certain in the whole book")
	}
	after, _, err := sheet.Load(files, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	changed := newBookFacts(nil, after)
	for i, s := range before.Sheets {
		was, is := shared.HazardsOf(s).Work.Steps, changed.HazardsOf(after.Sheets[i]).Work.Steps
		for k := range was {
			if !slices.Equal(named(was[k].Does), named(is[k].Does)) {
				t.Errorf("%s, step %d: %v has become %v", s.File, k+1, was[k].Does, is[k].Does)
			}
		}
	}
	t.Logf("%d links are certain", written)
}

// named are declarations as links write them, sorted: links stand in the order
// of the text.
func named(does []work.Declaration) []string {
	var list []string
	for _, d := range does {
		list = append(list, d.String())
	}
	slices.Sort(list)
	return list
}
