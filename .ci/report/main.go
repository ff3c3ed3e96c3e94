// Command report reads what go test -json writes and prints what a person
// needs of it: a line for each package, the whole output of what failed, the
// ten slowest tests, and a closing count. It exits 1 where a test failed, where
// a package did not build, and where no test ran.
//
//	go test -json ./... | go run ./.ci/report
package main

import (
	"bufio"
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
)

// An event is one line of go test -json (see cmd/test2json).
type event struct {
	Action, Package, ImportPath, Test, Output string
	Elapsed                                   float64 // s
}

// A timed test, with the time it took in s.
type timed struct {
	name    string
	elapsed float64
}

// A tally is what was counted so far.
type tally struct {
	passed, failed, skipped int
	broken                  bool // a package failed, or did not build
	tests                   []timed
	output                  map[string][]string // by package and test
}

func main() {
	t := tally{output: make(map[string][]string)}
	if err := t.read(os.Stdin, os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "report:", err)
		os.Exit(1)
	}
	t.close(os.Stdout)
	if t.broken || t.failed > 0 || t.passed == 0 {
		os.Exit(1)
	}
}

// read counts events until the input ends. A line that is no event is passed
// on as it is.
func (t *tally) read(r io.Reader, w io.Writer) error {
	lines := bufio.NewScanner(r)
	lines.Buffer(nil, 16<<20)
	for lines.Scan() {
		var e event
		if err := json.Unmarshal(lines.Bytes(), &e); err != nil {
			fmt.Fprintln(w, lines.Text())
			continue
		}
		t.count(e, w)
	}
	return lines.Err()
}

func (t *tally) count(e event, w io.Writer) {
	key := e.Package + " " + e.Test
	switch e.Action {
	case "output":
		t.output[key] = append(t.output[key], e.Output)
	case "build-output":
		fmt.Fprint(w, e.Output)
	case "build-fail":
		t.broken = true
	case "pass", "fail", "skip":
		t.end(e, key, w)
	}
}

// end counts a test or a package that has ended.
func (t *tally) end(e event, key string, w io.Writer) {
	if e.Test == "" {
		if e.Action != "skip" {
			fmt.Fprintf(w, "%-5s%-45s%7.1f s\n", e.Action, e.Package, e.Elapsed)
		}
		if e.Action == "fail" {
			t.broken = true
			fmt.Fprint(w, strings.Join(t.output[key], ""))
		}
		delete(t.output, key)
		return
	}
	switch e.Action {
	case "pass":
		t.passed++
	case "skip":
		t.skipped++
	case "fail":
		t.failed++
		fmt.Fprint(w, strings.Join(t.output[key], ""))
	}
	delete(t.output, key)
	if !strings.Contains(e.Test, "/") {
		t.tests = append(t.tests, timed{e.Package + " " + e.Test, e.Elapsed})
	}
}

// close prints the ten slowest tests and the count.
func (t *tally) close(w io.Writer) {
	slices.SortFunc(t.tests, func(a, b timed) int { return cmp.Compare(b.elapsed, a.elapsed) })
	fmt.Fprintln(w, "\nThe ten slowest tests:")
	for _, s := range t.tests[:min(10, len(t.tests))] {
		fmt.Fprintf(w, "%7.1f s  %s\n", s.elapsed, s.name)
	}
	fmt.Fprintf(w, "\n%d passed, %d failed, %d skipped\n", t.passed, t.failed, t.skipped)
}
