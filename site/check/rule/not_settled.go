package rule

import (
	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var notSettled = &check.Rule{
	Name:     "not-settled",
	Severity: finding.Warning,
	Doc: `Nothing is left unsettled

A draft made from old notes lists at its end, under "Not settled", what the
import was not sure of: a guessed time, a picture without words, a link that
leads nowhere. Settle each and take its line out; take the heading out last.`,
	Check: func(p *check.Pass) {
		if s := p.Sheet.Section(sheet.NotSettled); s != nil {
			p.Report(s.Span, "this sheet has things that are not settled", "settle each line of the section and take it out, then the heading")
		}
	},
}
