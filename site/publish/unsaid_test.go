package publish

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestWithoutWords(t *testing.T) {
	const source = `package p

var A = &calc.Calculator{
	Name: "a", Title: "Long words",
	Inputs: []calc.Input{{Name: "x", Label: "X", Help: "read it" + " off"}},
	Sources: []calc.Source{{Text: "a book"}},
	Cautions: []string{"Mind it."},
	Run: func() { say(thing{Help: "kept"}) },
}

var shared = append([]calc.Input{{Name: "y", Help: "also gone"}}, more...)
var key = Property{Input: calc.Input{Name: "z", Help: "kept too"}}
`
	const want = `package p

var A = &calc.Calculator{
	Name: "a", Title: "",
	Inputs: []calc.Input{{Name: "x", Label: "X", Help: ""}},
	Sources: nil,
	Cautions: []string{"Mind it."},
	Run: func() { say(thing{Help: "kept"}) },
}

var shared = append([]calc.Input{{Name: "y", Help: ""}}, more...)
var key = Property{Input: calc.Input{Name: "z", Help: "kept too"}}
`
	if got := string(withoutWords([]byte(source))); got != want {
		t.Errorf("left over:\n%s\nwant:\n%s", got, want)
	}
	const broken = "package p\nvar A = &calc.Calculator{Title: "
	if got := string(withoutWords([]byte(broken))); got != broken {
		t.Errorf("a file that is no Go was changed to\n%s", got)
	}
}

// TestOverlayFindsEveryCalculator: each file that holds a calculator is laid
// over by a shorter one, and no other but those with shared lists.
func TestOverlayFindsEveryCalculator(t *testing.T) {
	root, folder := filepath.Join("..", ".."), t.TempDir()
	name, err := overlay(root, folder)
	if err != nil {
		t.Fatal(err)
	}
	list, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	files, _ := filepath.Glob(filepath.Join(root, "calculators", "*", "*.go"))
	found := 0
	for _, f := range files {
		source, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(source), "= &calc.Calculator{") || strings.HasSuffix(f, "_test.go") {
			continue
		}
		found++
		if abs, _ := filepath.Abs(f); !strings.Contains(string(list), `"`+filepath.ToSlash(abs)+`"`) {
			t.Errorf("%s is compiled with all its words", f)
		}
	}
	if found < 20 {
		t.Errorf("%d calculators found", found)
	}
}
