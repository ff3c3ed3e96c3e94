package rule

import (
	"slices"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var draftLink = &check.Rule{
	Name:     "draft-link",
	Severity: finding.Warning,
	Doc: `A published sheet leads to published sheets

A draft is left out of the published book, so a link to it becomes plain words
there. A job whose work names a draft would lose a part of the work: that stops
publishing.`,
	Check: func(p *check.Pass) {
		if p.Sheet.Front.Draft {
			return
		}
		for _, l := range p.Sheet.Links {
			target := p.Book.Linked(p.Sheet, l)
			if target == nil || !target.Front.Draft {
				continue
			}
			if slices.ContainsFunc(p.Sheet.Work, func(w *sheet.Link) bool { return w == l }) {
				p.Report(l.Span, "the work names "+target.File+", which is a draft", "finish the draft and take its line draft: out, or take it off the work",
					func(f *finding.Finding) { f.Severity = finding.Error })
				continue
			}
			p.Report(l.Span, target.File+" is a draft, so this link is plain words in the published book", "finish the draft and take its line draft: out, or link to another sheet")
		}
	},
}
