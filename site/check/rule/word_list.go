package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var wordList = &check.Rule{
	Name: "word-list",
	Firm: true,
	Doc: `Each phrase of words.yaml can be read

A phrase that does not follow the grammar is never found, and what it was to
forbid passes.`,
	CheckBook: func(p *check.Pass) {
		if p.Book.Words.Source == nil {
			return
		}
		for _, fault := range p.Shared.Lexicon.Faults {
			p.ReportIn(p.Book.Words.Source, sheet.Span{}, fault, "see the grammar of phrases at the top of hazards.yaml")
		}
	},
}
