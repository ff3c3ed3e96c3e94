package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
)

var andOr = &check.Rule{
	Name:     "and-or",
	Severity: finding.Warning,
	Doc: `Neither and/or nor etc. stands in a step

Both leave the choice to the reader without saying so.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			if t.Kind != check.StepText && t.Message == nil {
				continue
			}
			for _, bad := range [...]string{"and/or", "etc."} {
				if at := strings.Index(t.Source, bad); at >= 0 {
					p.Report(t.Prose.Span(at, at+len(bad)), "“"+bad+"” leaves the choice open", "say which, or list them")
				}
			}
		}
	},
}
