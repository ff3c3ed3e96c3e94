package rule

import (
	"maps"
	"slices"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var unusedFigure = &check.Rule{
	Name:     "unused-figure",
	Severity: finding.Warning,
	Doc: `Every drawing and photograph is shown by a sheet

A picture that no sheet shows is a leftover, or a figure whose line was lost.`,
	CheckBook: func(p *check.Pass) {
		if slices.ContainsFunc(p.Book.Sheets, check.Unread) {
			return
		}
		used := make(map[string]bool)
		for _, s := range p.Book.Sheets {
			for _, f := range s.Figures {
				used[f.File] = true
			}
			for _, l := range s.Links {
				used[s.Resolve(l.Dest).File] = true
			}
		}
		used[p.Book.Areas.Vehicle], used[p.Book.Shop.Logo] = true, true
		for _, a := range p.Book.Areas.Areas {
			used[a.Figure] = true
		}
		for _, name := range slices.Sorted(maps.Keys(p.Book.Files)) {
			if isPicture(name) && !used[name] {
				p.ReportIn(finding.NewSource(name, nil), sheet.Span{}, "no sheet shows this picture", "show it, or delete it")
			}
		}
	},
}
