package rule

import (
	"slices"

	"baybook/site/check"
	"baybook/site/sheet"
)

// fewestSheets is how many finished sheets a book has before one can get lost
// in it.
const fewestSheets = 10

var orphanSheet = &check.Rule{
	Name: "orphan-sheet",
	Firm: true,
	Doc: `Another sheet leads to every sheet

A sheet that nothing links to is found by those alone who know that it is
there. A job is where work starts, so nothing needs to lead to it; nor to a
draft, to a sheet in a folder that areas.yaml lists, for the cover leads there
by a title of the shop's own, or in a book of fewer than ten finished sheets,
which is read through at a glance.`,
	CheckBook: func(p *check.Pass) {
		finished := 0
		for _, s := range p.Book.Sheets {
			if !s.Front.Draft {
				finished++
			}
		}
		if finished < fewestSheets || slices.ContainsFunc(p.Book.Sheets, check.Unread) {
			return
		}
		led, listed := make(map[*sheet.Sheet]bool), make(map[string]bool)
		for _, s := range p.Book.Sheets {
			for _, l := range s.Links {
				if target := p.Book.Linked(s, l); target != nil && target != s {
					led[target] = true
				}
			}
		}
		for _, a := range p.Book.Areas.Areas {
			listed[a.Folder] = true
		}
		for _, s := range p.Book.Sheets {
			if !led[s] && !listed[s.Area()] && s.Front.Kind != sheet.Job && !s.Front.Draft {
				p.ReportIn(s.Source, s.Front.Place("number"), "no other sheet leads to "+s.File, "link to it where somebody would need it")
			}
		}
	},
}
