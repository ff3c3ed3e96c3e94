// Package sheet says what a sheet is, and turns a file of front matter and
// CommonMark into one, every part with its place in the file.
//
// It reads through fs.FS and knows no HTML: what a part looks like is the
// business of package render, whether it may be published that of package
// check. Non-goals: raw HTML, and any Markdown beyond CommonMark with tables
// and task lists.
package sheet

import (
	"cmp"
	"path"
	"slices"
	"strings"

	"baybook/site/finding"

	"github.com/yuin/goldmark/ast"
)

// A Sheet is one file of the book, read. Its lists are in the order of the
// file.
type Sheet struct {
	// File is the path in the content folder: "ground/ground-point.md".
	File string
	// Path is File without its ending; pages and links go by it.
	Path   string
	Source *finding.Source
	Front  Front
	// Root is the tree: opening paragraphs, then Section nodes.
	Root ast.Node

	Sections    []*Section
	Messages    []*Message
	Steps       []*Step
	Values      []*Value
	Calculators []*EmbeddedCalculator
	Tables      []*Table
	Problems    []*Problem
	Readings    []*Reading
	Limits      []*LimitLink
	Figures     []*Figure
	Questions   []*Question
	Fences      []*Fence
	Links       []*Link
	// Nominal are the words that an about: link calls nominal or descriptive.
	Nominal []Span
	// Does are the links that declare work.
	Does []*Do
	// Work is the ordered list of sheets that a job composes.
	Work []*Link

	// judgesByLimits is true where a link names a limit of the register, known
	// or not, so that the sheet is read again when the register changes.
	judgesByLimits bool
}

// Area is the folder that holds the sheet: "ground".
func (s *Sheet) Area() string { return path.Dir(s.File) }

// Section finds a section by its title, nil where there is none.
func (s *Sheet) Section(title string) *Section {
	for _, sec := range s.Sections {
		if strings.EqualFold(sec.Title, title) {
			return sec
		}
	}
	return nil
}

// HasAnchor reports whether the sheet's page has a place of that name.
func (s *Sheet) HasAnchor(name string) bool { return slices.Contains(s.Anchors(), name) }

// Anchors lists the names of all places in the page that a link may lead to.
func (s *Sheet) Anchors() []string {
	var names []string
	for _, sec := range s.Sections {
		names = append(names, sec.Anchor)
	}
	for _, st := range s.Steps {
		names = append(names, st.Anchor())
		if st.Name != "" {
			names = append(names, st.Name)
		}
	}
	for _, r := range s.Readings {
		names = append(names, r.Anchor())
	}
	for _, q := range s.Questions {
		names = append(names, q.Anchor())
	}
	for _, c := range s.Calculators {
		names = append(names, c.Anchor())
	}
	for _, p := range s.Problems {
		names = append(names, p.Anchor())
	}
	return names
}

// Computations lists what the sheet's calc: links compute, of whatever kind:
// numbers in the text, calculators, tables and practice problems, in this
// order.
func (s *Sheet) Computations() []*Computation {
	var list []*Computation
	for _, v := range s.Values {
		list = append(list, &v.Computation)
	}
	for _, c := range s.Calculators {
		list = append(list, &c.Computation)
	}
	for _, t := range s.Tables {
		list = append(list, &t.Computation)
	}
	for _, p := range s.Problems {
		list = append(list, &p.Computation)
	}
	return list
}

// UsesLimit reports whether the sheet names a limit, in its text or to judge a
// reading by.
func (s *Sheet) UsesLimit(id string) bool {
	return slices.ContainsFunc(s.UsedLimits(), func(l *Limit) bool { return l.ID == id })
}

// UsedLimits lists the limits that the sheet names, each once, in its order.
func (s *Sheet) UsedLimits() []*Limit {
	type use struct {
		at    int
		limit *Limit
	}
	var uses []use
	for _, l := range s.Limits {
		uses = append(uses, use{l.Link.Start, l.Limit})
	}
	for _, r := range s.Readings {
		if r.Row != nil {
			uses = append(uses, use{r.Link.Start, r.Row})
		}
	}
	slices.SortStableFunc(uses, func(a, b use) int { return cmp.Compare(a.at, b.at) })
	var list []*Limit
	for _, u := range uses {
		if !slices.Contains(list, u.limit) {
			list = append(list, u.limit)
		}
	}
	return list
}
