package main

import (
	"encoding/json"
	"errors"
	"io"
	"os/exec"
	"path"
	"slices"
	"strings"
	"testing"
)

// The directions in which packages may import each other, and what of the
// standard library and of other modules the inner ones may.
//
// Do not widen a row to make a build pass. What runs in the browser is paid for
// by every phone: one import of fmt adds a fifth to what it loads. What checks
// a sheet must not be able to read or write a file. Talk it over first.
var directions = []direction{
	{of: "calculators/calc", own: nil, std: small},
	{of: "calculators/circuit/intset", own: nil, std: small},
	{of: "calculators/circuit/format", own: []string{"calculators/calc"}, std: small},
	{of: "calculators/circuit", own: []string{"calculators/circuit/intset", "calculators/calc", "calculators/electrical"}, std: small},
	{of: "calculators/circuit/solve", own: []string{"calculators/circuit", "calculators/circuit/intset", "calculators/circuit/format", "calculators/calc", "calculators/electrical"}, std: small},
	{of: "calculators/circuit/judge", own: []string{"calculators/circuit", "calculators/circuit/intset", "calculators/circuit/format", "calculators/circuit/solve", "calculators/calc", "calculators/electrical"}, std: small},
	{of: "calculators/circuit/draw", own: []string{"calculators/circuit", "calculators/circuit/intset", "calculators/circuit/format", "calculators/circuit/solve", "calculators/circuit/judge", "calculators/calc"}, std: small},
	{of: "calculators/circuit/list", own: []string{"calculators/circuit", "calculators/circuit/intset", "calculators/circuit/format", "calculators/calc"}, std: small},
	{of: "calculators/circuit/faults", own: []string{"calculators/circuit", "calculators/circuit/intset", "calculators/circuit/solve", "calculators/calc"}, std: small},
	{of: "calculators/circuit/report", own: []string{"calculators/circuit/...", "calculators/circuit", "calculators/calc"}, std: small},
	{of: "calculators/circuit/circuittest", own: []string{"calculators/circuit", "calculators/calctest"}, std: anything, other: true},
	{of: "calculators/calctest", own: []string{"calculators/..."}, std: anything},
	{of: "calculators", own: []string{"calculators/..."}, std: small},
	{of: "calculators/*", own: []string{"calculators/calc", "calculators/electrical"}, std: small},
	{of: "site/find", own: []string{"calculators/calc"}, std: searching},
	{of: "site/study", own: nil, std: small},
	{of: "site/finding", own: nil, std: not("os", "net", "net/http", "os/exec"), other: true},
	{of: "site/photo", own: nil, std: pure, other: true},
	{of: "site/begin", own: nil, std: pure},
	{of: "theme", own: nil, std: pure},
	{of: "site/check/work", own: []string{"site/check/english"}, std: pure, other: true},
	{of: "site/sheet", own: []string{"site/check/work", "site/finding", "site/photo", "calculators/..."}, std: pure, other: true},
	{of: "site/check/english", own: []string{"calculators/calc"}, std: pure, other: true},
	{of: "site/check/rule", own: []string{"site/check", "site/check/english", "site/check/work", "site/sheet", "site/finding", "calculators/..."}, std: pure, other: true},
	{of: "site/check", own: []string{"site/check/english", "site/check/work", "site/sheet", "site/finding", "calculators/..."}, std: pure, other: true},
	{of: "site/render/lexer", own: nil, std: pure, other: true},
	{of: "site/render", own: []string{"site/render/lexer", "site/check", "site/check/rule", "site/check/work", "site/sheet", "site/find", "site/finding", "theme", "calculators/..."}, std: pure, other: true},
	{of: "site/begin/notes", own: []string{"site/photo", "site/sheet"}, std: not("os", "net/http", "os/exec"), other: true},
	{of: "site/publish", own: []string{"site/render", "site/sheet", "site/finding", "site/photo", "theme"}, std: not("net", "net/http"), other: true},
	{of: "site/core", own: []string{"site/publish"}, std: not("net", "net/http")},
	{of: "site/serve", own: []string{"site", "site/finding"}, std: anything, other: true},
	{of: "site/sitetest", own: []string{"site/...", "calculators/..."}, std: anything},
	{of: "site/browsertest", own: []string{"site", "calculators/..."}, std: anything, other: true},
	{of: "site", own: []string{"site/begin", "site/check", "site/check/rule", "site/core", "site/find", "site/finding", "site/photo", "site/publish", "site/render", "site/sheet", "theme", "calculators/..."}, std: not("net", "net/http"), other: true},
	{of: "cmd/browser", own: []string{"calculators/...", "site/find", "site/study"}, std: browser},
	{of: "cmd/supply", own: nil, std: anything, other: true},
	{of: "cmd/baybook", own: []string{"site", "site/begin", "site/begin/notes", "site/finding", "site/serve", "site/sheet", "theme", "calculators/..."}, std: anything, other: true},
}

// A direction is one package's row, or that of all in a folder.
type direction struct {
	of  string
	own []string
	// std says what of the standard library may be imported; other allows other
	// modules.
	std   func(string) bool
	other bool
}

func anything(string) bool { return true }

func only(names ...string) func(string) bool {
	return func(s string) bool { return slices.Contains(names, s) }
}

func not(names ...string) func(string) bool {
	return func(s string) bool { return !slices.Contains(names, s) }
}

// small is what costs the browser next to nothing; searching and browser are the
// same for the search and for the door.
var (
	small     = only("cmp", "errors", "iter", "maps", "math", "math/bits", "math/cmplx", "slices", "sort", "strconv", "strings", "unicode/utf8")
	searching = only("cmp", "iter", "maps", "slices", "sort", "strconv", "strings", "unicode", "unicode/utf8")
	browser   = only("math", "slices", "strconv", "strings", "unsafe")
)

// pure is what reads no file by name, and no network.
var pure = not("os", "os/exec", "path/filepath", "net", "net/http", "syscall", "unsafe", "plugin", "log")

// A listed package is what go list says of one.
type listed struct {
	ImportPath, Name string
	Imports, Deps    []string
	Standard         bool
	Module           *struct{ Path string }
}

const module = "baybook"

// list asks the toolchain for packages.
func list(t *testing.T, arguments ...string) []listed {
	t.Helper()
	cmd := exec.Command("go", append([]string{"list", "-json=ImportPath,Name,Imports,Deps,Standard,Module"}, arguments...)...)
	cmd.Dir = "../.."
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	var all []listed
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var l listed
		if err := d.Decode(&l); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, l)
	}
}

func TestImportsRunOneWay(t *testing.T) {
	seen := make(map[string]bool)
	for _, p := range list(t, "./...") {
		name := strings.TrimPrefix(strings.TrimPrefix(p.ImportPath, module), "/")
		row := rowOf(name)
		if row == nil {
			t.Errorf("%s has no row in the table of directions; add one", name)
			continue
		}
		seen[row.of] = true
		for _, imported := range p.Imports {
			if fault := row.refuses(imported); fault != "" {
				t.Errorf("%s imports %s: %s", name, imported, fault)
			}
		}
	}
	for _, d := range directions {
		if !seen[d.of] {
			t.Errorf("the row %s is of no package", d.of)
		}
	}
}

// rowOf finds a package's row: its own, else that of its folder.
func rowOf(name string) *direction {
	for i := range directions {
		if directions[i].of == name || directions[i].of == path.Dir(name)+"/*" {
			return &directions[i]
		}
	}
	return nil
}

// refuses says why a package may not import another, "" where it may.
func (d *direction) refuses(imported string) string {
	if imported != module && !strings.HasPrefix(imported, module+"/") {
		first, _, _ := strings.Cut(imported, "/")
		if strings.Contains(first, ".") {
			if !d.other {
				return "no other module belongs here"
			}
			return ""
		}
		if !d.std(imported) {
			return "it is kept out of here"
		}
		return ""
	}
	name := strings.TrimPrefix(imported, module+"/")
	if path.Base(name) != path.Base(strings.TrimSuffix(name, "test")) && !strings.HasSuffix(d.of, "test") {
		return "a test kit is for tests alone"
	}
	for _, may := range d.own {
		if folder, whole := strings.CutSuffix(may, "/..."); name == may || whole && (name == folder || strings.HasPrefix(name, folder+"/")) {
			return ""
		}
	}
	return "that is not a direction in which imports run"
}

// Every phone pays for what the core holds, even where it comes in through
// another package.
func TestCoreStaysSmall(t *testing.T) {
	dear := []string{"fmt", "encoding/json", "reflect", "regexp", "time", "embed", "os", "encoding/binary", "unicode/utf16"}
	for _, p := range list(t, "./calculators", "./site/find", "./site/study") {
		for _, d := range p.Deps {
			if slices.Contains(dear, d) {
				t.Errorf("%s comes to hold %s", p.ImportPath, d)
			}
		}
	}
}

// The table of directions must refuse something, or it would be no test.
func TestDirectionsRefuse(t *testing.T) {
	for _, c := range []struct{ of, imports string }{
		{"calculators/calc", "fmt"}, {"calculators/calc", "baybook/calculators/audio"}, {"calculators/audio", "encoding/json"},
		{"calculators/audio", "baybook/site/sheet"}, {"calculators", "baybook/calculators/calctest"}, {"site/find", "math"},
		{"site/check", "os"}, {"site/check", "baybook/site"}, {"site/sheet", "baybook/site/check"}, {"site/render", "baybook/site/publish"},
		{"site/serve", "baybook/site/publish"}, {"site", "baybook/site/serve"}, {"site", "baybook/cmd/baybook"}, {"cmd/browser", "fmt"},
		{"site/finding", "net/http"}, {"calculators/calc", "example.org/other"},
	} {
		if rowOf(c.of).refuses(c.imports) == "" {
			t.Errorf("%s may import %s", c.of, c.imports)
		}
	}
}
