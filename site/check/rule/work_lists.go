package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/work"
)

var workLists = &check.Rule{
	Name: "work-lists",
	Firm: true,
	Doc: `The lists of work can be read, and their rules name what is in them

content/work.yaml says what a step can do, to what, with what and in which
state; what some work changes; what must come before a step; and which orders
are never given. Names are ids and properties, each different from the others.`,
	CheckBook: func(p *check.Pass) {
		w := p.Book.Work
		if w.Source == nil {
			return
		}
		_, problems := work.NewWords(w.Lists, p.Shared.Stems)
		for _, problem := range problems {
			id, _, _ := strings.Cut(problem, ":")
			p.ReportIn(w.Source, w.Places[id], problem, "write the phrase as the top of the file says")
		}
	},
}
