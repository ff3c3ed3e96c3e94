package begin_test

import (
	"flag"
	"io/fs"
	"os"
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/site/begin"
	"baybook/site/check"
	"baybook/site/check/rule"
	"baybook/site/sheet"
)

var update = flag.Bool("update", false, "write the register anew from the shipped one")

func TestBookPassesEveryCheck(t *testing.T) {
	book, list, err := sheet.Load(begin.Book(), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range append(list, check.Run(rule.All(), book, check.History{})...) {
		t.Errorf("%s: [%s] %s\n%s", f.Pos, f.Rule, f.Message, f.Do)
	}
	figures, circuits, jobs := 0, 0, 0
	for _, s := range book.Sheets {
		figures, circuits = figures+len(s.Figures), circuits+len(check.CircuitsOf(s))
		if s.Front.Kind == sheet.Job && len(s.Work) > 0 && len(s.Computations()) > 0 {
			jobs++
		}
	}
	if figures == 0 || circuits == 0 || jobs == 0 || len(book.Limits.Limits) == 0 || len(book.Glossary.Terms) == 0 {
		t.Errorf("the book should show one of each: %d figures, %d circuits, %d jobs with work and a price", figures, circuits, jobs)
	}
}

// A new shop is to have every core hazard from the first day, in the words of
// the shipped register.
func TestRegisterIsTheCoreOfTheShippedOne(t *testing.T) {
	shipped, err := os.ReadFile("../../content/hazards.yaml")
	if err != nil {
		t.Fatal(err)
	}
	want := core(string(shipped))
	if *update {
		if err := os.WriteFile("book/hazards.yaml", []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := fs.ReadFile(begin.Book(), "hazards.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		got = []byte(want) // the file compiled in is the one before
	}
	if string(got) != want {
		t.Error("book/hazards.yaml differs from the core rows of content/hazards.yaml; run go test ./site/begin -update and read the difference")
	}
	if n := strings.Count(want, "\n- id: "); n < 15 {
		t.Errorf("the core has %d hazards", n)
	}
}

// The lists of work are those of the shipped book: the register's rows rest on
// their names.
func TestWorkIsThatOfTheShippedBook(t *testing.T) {
	shipped, err := os.ReadFile("../../content/work.yaml")
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("book/work.yaml", shipped, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if got, _ := fs.ReadFile(begin.Book(), "work.yaml"); !*update && string(got) != string(shipped) {
		t.Error("book/work.yaml differs from content/work.yaml; run go test ./site/begin -update")
	}
}

// core is the register's text without the rows of other sets.
func core(register string) string {
	var b strings.Builder
	for row := range strings.SplitAfterSeq(register, "\n\n") {
		if strings.HasPrefix(row, "- id: ") && !strings.Contains(row, "\n  set: core\n") {
			continue
		}
		b.WriteString(row)
	}
	return b.String()
}
