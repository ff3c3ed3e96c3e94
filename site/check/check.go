// Package check decides whether a book may be published: whether what can hurt
// is warned of in time, whether the numbers are those of the formulas, whether
// the links lead somewhere, and whether the steps read as steps.
//
// It holds the driver and the facts that rules share. The rules themselves are
// values in package rule, one file each; how words, sentences and phrases are
// read is the business of package english. A rule gets everything in a [Pass]
// and gives everything through its Report: it reads no file, keeps no state,
// and knows no clock. What it finds is a [finding.Finding] with its place;
// where the answer is certain, with a fix, which only the driver applies.
//
// The rules read a sheet as passages: its leaf blocks in order, each taken
// apart into sentences once and shared by all rules ([SheetFacts]). What all
// sheets of a book share stands in [BookFacts].
package check

import (
	"fmt"
	"strings"
	"time"

	"baybook/site/finding"
	"baybook/site/sheet"
)

// A Rule is one check.
type Rule struct {
	// Name is lower case with hyphens: "weak-word".
	Name string
	// Doc is the rule's page: a title line, an empty line, and why it is there.
	Doc string
	// Severity is that of its findings unless they say otherwise.
	Severity finding.Severity
	// Firm is true where no waiver can set the rule aside.
	Firm bool
	// Check looks at one sheet, CheckDrawing at one SVG file, CheckBook at the
	// book as a whole. None is set for a rule that the loader itself keeps.
	Check, CheckDrawing, CheckBook func(*Pass)
}

// A Pass is one run of a rule.
type Pass struct {
	Rule *Rule
	// Sheet or Drawing is what is looked at; both are nil for CheckBook.
	Sheet   *sheet.Sheet
	Drawing *finding.Source
	Book    *sheet.Book
	// History is what is known of earlier issues.
	History History

	// Facts is what is known of the sheet, nil where none is looked at.
	Facts *SheetFacts
	// Shared is what all sheets share.
	Shared *BookFacts

	report func(finding.Finding)
}

// A History is what the caller knows of the book's past. The zero value knows
// nothing, and checks that need it are left out.
type History struct {
	// Today is the day of the check.
	Today time.Time
	// Sheets holds the last recorded issue of each sheet by its file.
	Sheets map[string]Issue
	// Changes are the recorded changes of each sheet by its file, the newest
	// first. Pages tell of them; no rule does.
	Changes map[string][]Change
}

// A Change is one record of a sheet.
type Change struct {
	// Revision and Date are those of its front matter with the change, as they
	// were written.
	Revision, Date string
	// Day is when the change was recorded, What its first line.
	Day  time.Time
	What string
	// Number counts the records of the book back from the newest, 0: changes of
	// one number were recorded together.
	Number int
}

// An Issue is a sheet as it was last recorded.
type Issue struct {
	// Revision and Date are those of its front matter then.
	Revision string
	Date     time.Time
	// Changed is true where the sheet's text is no longer the same.
	Changed bool
	// Newest is when the sheet was last changed, to the day: today where the
	// change is not recorded yet, and the zero time where that is not known.
	Newest time.Time
}

// Report gives a finding about a stretch of the sheet's file.
func (p *Pass) Report(at sheet.Span, message, do string, extra ...func(*finding.Finding)) {
	p.ReportIn(p.Sheet.Source, at, message, do, extra...)
}

// ReportIn gives a finding about a stretch of any file.
func (p *Pass) ReportIn(src *finding.Source, at sheet.Span, message, do string, extra ...func(*finding.Finding)) {
	f := src.At(at.Start, at.End)
	f.Rule, f.Severity, f.Message, f.Do = p.Rule.Name, p.Rule.Severity, message, do
	for _, e := range extra {
		e(&f)
	}
	p.report(f)
}

// WithFix adds the one edit that puts a finding right.
func WithFix(message string, at sheet.Span, text string) func(*finding.Finding) {
	return func(f *finding.Finding) {
		f.Fix = &finding.Fix{Message: message, Edits: []finding.Edit{{Start: at.Start, End: at.End, New: text}}}
	}
}

// WithNote points at a second place.
func WithNote(src *finding.Source, at int, text string) func(*finding.Finding) {
	return func(f *finding.Finding) {
		f.Notes = append(f.Notes, finding.Note{Pos: src.Position(at), Text: text})
	}
}

// Run checks a book by the rules and gives the findings in order.
func Run(rules []*Rule, book *sheet.Book, history History) finding.List {
	return NewCache(rules).Run(book, history)
}

// checkSheet runs every sheet rule and lets the sheet's waivers take effect.
func checkSheet(s *sheet.Sheet, shared *BookFacts, history History) finding.List {
	if Unread(s) { // the loader said why
		return nil
	}
	facts := shared.factsOf(s)
	var list finding.List
	for _, rule := range shared.Rules {
		if rule.Check != nil {
			list = append(list, runRule(&Pass{Rule: rule, Sheet: s, Book: shared.Book, History: history, Facts: facts, Shared: shared})...)
		}
	}
	return waive(s, shared.Rules, list)
}

// checkDrawing runs every rule for drawings.
func checkDrawing(drawing *finding.Source, shared *BookFacts) finding.List {
	var list finding.List
	for _, rule := range shared.Rules {
		if rule.CheckDrawing != nil {
			list = append(list, runRule(&Pass{Rule: rule, Drawing: drawing, Book: shared.Book, Shared: shared})...)
		}
	}
	return list
}

// runRule runs one rule; its failure is a finding at the top of the file.
func runRule(p *Pass) (list finding.List) {
	p.report = func(f finding.Finding) { list = append(list, f) }
	defer func() {
		if failure := recover(); failure != nil {
			src := finding.NewSource("", nil)
			switch {
			case p.Sheet != nil:
				src = p.Sheet.Source
			case p.Drawing != nil:
				src = p.Drawing
			}
			f := src.At(0, 0)
			f.Rule, f.Message = p.Rule.Name, fmt.Sprintf("the rule itself failed here: %v", failure)
			f.Do = "report this with the sheet; until then the sheet cannot be published unchecked"
			list = append(list, f)
		}
	}()
	switch {
	case p.Sheet != nil:
		p.Rule.Check(p)
	case p.Drawing != nil:
		p.Rule.CheckDrawing(p)
	default:
		p.Rule.CheckBook(p)
	}
	return list
}

// Title is the rule's title line: what it asks, in a sentence.
func (r *Rule) Title() string {
	title, _, _ := strings.Cut(r.Doc, "\n")
	return title
}

// Why is what the doc says below the title line.
func (r *Rule) Why() string {
	_, rest, _ := strings.Cut(r.Doc, "\n")
	return strings.TrimSpace(rest)
}
