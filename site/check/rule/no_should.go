package rule

import (
	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var noShould = &check.Rule{
	Name:     "no-should",
	Severity: finding.Warning,
	Doc: `Steps and messages say what is, not what should be

"Should" leaves open whether it must. Write an order, or must, or may.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			if t.Step == nil && t.Message == nil && !t.Under(sheet.ProveIt) {
				continue
			}
			for i, w := range t.Words {
				if w.Lower == "should" {
					p.Report(t.Span(i, i+1), "“should” leaves open whether it must", "write an order, or must, or may")
				}
			}
		}
	},
}
