package render

import (
	"strings"

	"baybook/site/find"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// Docs lists everything that can be found: sheets, their steps and sections,
// and the calculators.
func (r *Renderer) Docs() []find.Doc {
	var docs []find.Doc
	for i, s := range r.Book.Sheets {
		docs = append(docs, r.sheetDocs(s, i)...)
	}
	for i, c := range r.Calculators {
		docs = append(docs, find.Doc{
			Sheet: int32(len(r.Book.Sheets) + i), Title: c.Question, Number: "", Address: CalculatorPage(c), Kind: find.Calculator,
			Text: c.Title + ". " + c.Doc, Words: append([]string{c.Name, c.Title}, calculatorWords[c.Name]...), Area: "calculators",
		})
	}
	return docs
}

// sheetDocs are a sheet, its sections and its steps.
func (r *Renderer) sheetDocs(s *sheet.Sheet, id int) []find.Doc {
	page := PageOf(s)
	docs := []find.Doc{{
		Sheet: int32(id), Title: s.Front.Title, Number: s.Front.Number, Address: page, Kind: find.Sheet,
		Text: openingWords(s), Words: s.Front.Synonyms, Area: s.Area(),
	}}
	for _, sec := range s.Sections {
		if sec.Is(sheet.StepsTitle) || sec.Is(sheet.Sources) || sec.Is(sheet.CheckYourself) {
			continue
		}
		docs = append(docs, find.Doc{
			Sheet: int32(id), Title: s.Front.Title + ": " + sec.Title, Number: s.Front.Number, Address: page + "#" + sec.Anchor,
			Kind: find.Section, Text: s.Prose(sec, isAside).Text, Area: s.Area(),
		})
	}
	warned := make(map[*sheet.Step][]string)
	for _, b := range r.messages(s).Built {
		if b.Step != nil && !b.Line() {
			warned[b.Step] = append(warned[b.Step], b.Hazard.Title)
		}
	}
	for _, st := range s.Steps {
		docs = append(docs, find.Doc{
			Sheet: int32(id), Title: s.Front.Title, Number: s.Front.Number, Address: page + "#" + st.Anchor(),
			Kind: find.Step, Text: s.Prose(st, isAside).Text, Words: warned[st], Area: s.Area(),
		})
	}
	return docs
}

// isAside reports whether a node is left out of a step's or section's own
// words.
func isAside(n ast.Node) bool {
	switch n.(type) {
	case *sheet.Message, *sheet.Fence, *sheet.EmbeddedCalculator, *sheet.Table, *sheet.Problem:
		return true
	}
	return false
}

// openingWords is the words before the first section.
func openingWords(s *sheet.Sheet) string {
	var b strings.Builder
	for n := s.Root.FirstChild(); n != nil; n = n.NextSibling() {
		if _, ok := n.(*sheet.Section); ok {
			break
		}
		b.WriteString(s.Prose(n, nil).Text)
	}
	return strings.TrimSpace(b.String())
}

// Synonyms are the glossary's terms as the search takes them.
func (r *Renderer) Synonyms() [][]string {
	var lists [][]string
	for _, t := range r.Book.Glossary.Terms {
		if list := append(append([]string{t.Name}, t.Also...), t.Not...); len(list) > 1 {
			lists = append(lists, list)
		}
	}
	return lists
}
