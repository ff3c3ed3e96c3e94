package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/sheet"
)

var glossaryTerms = &check.Rule{
	Name: "glossary-term",
	Firm: true,
	Doc: `Each term of the glossary has a meaning, and its names are its own

A name that the book does not use may not be the term of another entry: the fix
would write one wrong name for another.`,
	CheckBook: func(p *check.Pass) {
		g := p.Book.Glossary
		if g == nil || g.Source == nil {
			return
		}
		terms := make(map[string]bool)
		for _, t := range g.Terms {
			key := strings.ToLower(t.Name)
			if terms[key] {
				p.ReportIn(g.Source, t.Span, "the term “"+t.Name+"” stands twice", "make one entry of the two")
			}
			terms[key] = true
			if t.Meaning == "" {
				p.ReportIn(g.Source, t.Span, "the term “"+t.Name+"” has no meaning", "add meaning: in a sentence")
			}
		}
		for _, t := range g.Terms {
			for _, n := range t.Not {
				if terms[strings.ToLower(n)] {
					p.ReportIn(g.Source, t.Span, "“"+n+"” is not to be used for "+t.Name+", and is a term itself", "take it out of not")
				}
			}
		}
		for _, msg := range p.Shared.Glossary.Faults {
			p.ReportIn(g.Source, sheet.Span{}, msg, "write names as plain words")
		}
	},
}
