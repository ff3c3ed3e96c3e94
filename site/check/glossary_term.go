package check

import (
	"strings"

	"baybook/site/sheet"
)

var glossaryTerms = &Rule{
	Name: "glossary-term",
	Firm: true,
	Doc: `Each term of the glossary has a meaning, and its names are its own

A name that the book does not use may not be the term of another entry: the fix
would write one wrong name for another.

Bad:

	-- glossary.yaml --
	- term: bulkhead
	  not: [dash]
	  meaning: The sheet between engine bay and cab.
	- term: dash
	  meaning: The panel below the windscreen.

Good:

	-- glossary.yaml --
	- term: bulkhead
	  not: [firewall]
	  meaning: The sheet between engine bay and cab.
`,
	CheckBook: func(p *Pass) {
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
		for _, msg := range p.reader.glossary.faults {
			p.ReportIn(g.Source, sheet.Span{}, msg, "write names as plain words")
		}
	},
}
