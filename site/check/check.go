// Package check decides whether a book may be published: whether what can hurt
// is warned of in time, whether the numbers are those of the formulas, whether
// the links lead somewhere, and whether the steps read as steps.
//
// A rule is a value in the list [Rules]; adding one is one file and one line.
// A rule gets everything in a [Pass] and gives everything through its Report:
// it reads no file, keeps no state, and knows no clock. What it finds is a
// [finding.Finding] with its place; where the answer is certain, with a fix,
// which only the driver applies.
//
// The rules read a sheet as passages: its leaf blocks in order, each taken
// apart into sentences once and shared by all rules. How a hazard is found in
// them is told in hazard.go, how phrases are matched in package phrase.
package check

import (
	"fmt"
	"slices"
	"sync"
	"time"

	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// A Rule is one check.
type Rule struct {
	// Name is lower case with hyphens: "weak-word".
	Name string
	// Doc is the rule's page: a title line, why it is there, and behind lines
	// "Bad:" and "Good:" an indented example each. Every example is run by a
	// test.
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

	report func(finding.Finding)
	facts  *facts
	reader *reader
}

// A History is what the caller knows of the book's past. The zero value knows
// nothing, and checks that need it are left out.
type History struct {
	// Today is the day of the check.
	Today time.Time
	// Sheets holds the last recorded issue of each sheet by its file.
	Sheets map[string]Issue
}

// An Issue is a sheet as it was last recorded.
type Issue struct {
	// Revision and Date are those of its front matter then.
	Revision string
	Date     time.Time
	// Changed is true where the sheet's text is no longer the same.
	Changed bool
	// Newest is when the sheet was last changed, to the day.
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

// withFix adds the one edit that puts a finding right.
func withFix(message string, at sheet.Span, text string) func(*finding.Finding) {
	return func(f *finding.Finding) {
		f.Fix = &finding.Fix{Message: message, Edits: []finding.Edit{{Start: at.Start, End: at.End, New: text}}}
	}
}

// withNote points at a second place.
func withNote(src *finding.Source, at int, text string) func(*finding.Finding) {
	return func(f *finding.Finding) {
		f.Notes = append(f.Notes, finding.Note{Pos: src.Position(at), Text: text})
	}
}

// Run checks a book by every rule and gives the findings in order.
func Run(book *sheet.Book, history History) finding.List { return new(Memory).Run(book, history) }

// checkSheet runs every sheet rule and lets the sheet's waivers take effect.
func checkSheet(book *sheet.Book, s *sheet.Sheet, r *reader, history History) finding.List {
	if s.Root == nil { // refused unread; the loader said why
		return nil
	}
	f := r.factsOf(s)
	var list finding.List
	for _, rule := range Rules {
		if rule.Check != nil {
			list = append(list, runRule(&Pass{Rule: rule, Sheet: s, Book: book, History: history, facts: f, reader: r})...)
		}
	}
	return waive(s, list)
}

// checkDrawing runs every rule for drawings.
func checkDrawing(book *sheet.Book, drawing *finding.Source, r *reader) finding.List {
	var list finding.List
	for _, rule := range Rules {
		if rule.CheckDrawing != nil {
			list = append(list, runRule(&Pass{Rule: rule, Drawing: drawing, Book: book, reader: r})...)
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

// A reader is what all sheets share: the register's phrases, ready to be
// looked for, and the stems of words.
type reader struct {
	book     *sheet.Book
	rules    []*Rule // every rule, the loader's too
	stems    *phrase.Stems
	register *register
	glossary *glossary
	lexicon  *lexicon

	mu     sync.Mutex
	looked map[*sheet.Sheet]*looked
	kept   int // how many of them hold facts
	// letters begin the document numbers of lettersOf.
	letters   map[string]bool
	lettersOf *sheet.Book
}

func newReader(book *sheet.Book) *reader {
	stems := &phrase.Stems{}
	return &reader{
		book: book, rules: slices.Concat(Rules, LoaderRules), stems: stems, looked: make(map[*sheet.Sheet]*looked),
		register: readRegister(book.Register, stems), glossary: readGlossary(book.Glossary, stems), lexicon: readLexicon(stems),
	}
}

// Named finds a rule by name, among those of the loader too; nil where there
// is none.
func Named(name string) *Rule { return named(slices.Concat(Rules, LoaderRules), name) }

func named(rules []*Rule, name string) *Rule {
	for _, r := range rules {
		if r.Name == name {
			return r
		}
	}
	return nil
}
