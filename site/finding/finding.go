// Package finding says what is wrong in a book's text, and where: the rule that
// was broken, its place by file, line and column, the offending words, why they
// are wrong, what to do, and, where the answer is certain, the edit that does it.
//
// Loader, checks and command all speak in findings, so this package imports
// nothing of the builder. Rules make findings ([Source.At] fills in the place),
// a driver puts them in order ([List.Dedupe]), and a writer shows them:
// [WriteText] for people, [WriteJSON] for programs, [WriteSARIF] for tools that
// read the OASIS exchange format.
package finding

import (
	"cmp"
	"fmt"
	"path"
	"path/filepath"
	"slices"
)

// Severity says whether a finding stops publishing. The zero value does, so a
// rule that says nothing about it is taken seriously.
type Severity uint8

const (
	Error   Severity = iota // nothing is published while one is left
	Warning                 // worth a look; the book is published all the same
)

// String gives "error" or "warning", the words that every writer uses.
func (s Severity) String() string {
	if s == Error {
		return "error"
	}
	return "warning"
}

// Note points at a second place that explains a finding, such as the first use
// of a number that is used twice. Its position may be unknown.
type Note struct {
	Pos  Position
	Text string
}

// Finding is one thing wrong in one place.
type Finding struct {
	Rule     string   // id of the rule, lower-kebab
	Severity Severity // Error is the zero value
	Pos      Position // where the offending words start
	Length   int      // bytes of the offending words; 0 for a place between bytes
	Found    string   // the offending words
	Message  string   // why they are wrong, one line, no full stop
	Do       string   // what to do about it, an imperative; may be empty
	Notes    []Note   // other places that explain it
	Fix      *Fix     // the edit that puts it right; nil when a person must decide
	Line     string   // text of the line at Pos, for the excerpt; no line end
}

// List is what a check of a book found.
type List []Finding

// Sort puts findings in the order of a reader going through the book: by file,
// offset, rule and message. It ends at the same order however the checks ran.
func (l List) Sort() {
	slices.SortStableFunc(l, compare)
}

// compare orders by what [List.Sort] promises, then by all that [same] looks at,
// so that equal findings always stand side by side.
func compare(a, b Finding) int {
	return cmp.Or(
		cmp.Compare(a.Pos.File, b.Pos.File),
		cmp.Compare(a.Pos.Offset, b.Pos.Offset),
		cmp.Compare(a.Rule, b.Rule),
		cmp.Compare(a.Message, b.Message),
		cmp.Compare(a.Pos.Line, b.Pos.Line),
		cmp.Compare(a.Pos.Column, b.Pos.Column),
		cmp.Compare(a.Length, b.Length),
		cmp.Compare(a.Severity, b.Severity),
		cmp.Compare(a.Do, b.Do),
	)
}

// Dedupe sorts the list and returns it with each finding once: two checks that
// come to the same words by different ways say it only once. It reuses the
// list's memory.
func (l List) Dedupe() List {
	l.Sort()
	return slices.CompactFunc(l, func(a, b Finding) bool { return compare(a, b) == 0 })
}

// In returns the list with its files named from outside the folder that holds
// the sheets, as a person at a prompt or an editor names them. Positions without
// a file stay so. The list itself is not changed.
func (l List) In(folder string) List {
	within := func(p Position) Position {
		if p.File != "" {
			p.File = path.Join(filepath.ToSlash(folder), p.File)
		}
		return p
	}
	out := slices.Clone(l)
	for i := range out {
		out[i].Pos = within(out[i].Pos)
		out[i].Notes = slices.Clone(out[i].Notes)
		for j := range out[i].Notes {
			out[i].Notes[j].Pos = within(out[i].Notes[j].Pos)
		}
	}
	return out
}

// Errors counts the findings that stop publishing.
func (l List) Errors() int {
	n := 0
	for i := range l {
		if l[i].Severity == Error {
			n++
		}
	}
	return n
}

// Fixes collects the fixes of the findings in one file, for [Apply].
func (l List) Fixes(file string) []Fix {
	var fixes []Fix
	for i := range l {
		if l[i].Fix != nil && l[i].Pos.File == file {
			fixes = append(fixes, *l[i].Fix)
		}
	}
	return fixes
}

// Err gives nil when nothing stops publishing, and otherwise an [*ListError]
// that holds the whole list.
func (l List) Err() error {
	if l.Errors() == 0 {
		return nil
	}
	return &ListError{List: l}
}

// ListError is a list with at least one error in it, carried as a Go error.
type ListError struct {
	List List
}

// Error gives the first error with its place, and how many more there are.
func (e *ListError) Error() string {
	n := e.List.Errors()
	for i := range e.List {
		f := &e.List[i]
		if f.Severity != Error {
			continue
		}
		s := f.Message
		if place := f.Pos.String(); place != "" {
			s = place + ": " + s
		}
		if n > 1 {
			s += " (and " + count(n-1, "more error") + ")"
		}
		return s
	}
	return "no errors"
}

// count writes a number with its noun, "1 error" or "2 errors".
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
