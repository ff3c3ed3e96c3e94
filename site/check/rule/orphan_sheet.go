package rule

import (
	"slices"

	"baybook/site/check"
	"baybook/site/sheet"
)

var orphanSheet = &check.Rule{
	Name: "orphan-sheet",
	Firm: true,
	Doc: `Another sheet leads to every sheet

A sheet that nothing links to is found by those alone who know that it is
there. A job is where work starts, so nothing needs to lead to it; nor to a
draft, or in a book of one finished sheet.`,
	CheckBook: func(p *check.Pass) {
		finished := 0
		for _, s := range p.Book.Sheets {
			if !s.Front.Draft {
				finished++
			}
		}
		if finished < 2 || slices.ContainsFunc(p.Book.Sheets, check.Unread) {
			return
		}
		led := make(map[*sheet.Sheet]bool)
		for _, s := range p.Book.Sheets {
			for _, l := range s.Links {
				if target := p.Book.Linked(s, l); target != nil && target != s {
					led[target] = true
				}
			}
		}
		for _, s := range p.Book.Sheets {
			if !led[s] && s.Front.Kind != sheet.Job && !s.Front.Draft {
				p.ReportIn(s.Source, s.Front.Place("number"), "no other sheet leads to "+s.File, "link to it where somebody would need it")
			}
		}
	},
}
