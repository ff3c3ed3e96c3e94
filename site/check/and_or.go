package check

import (
	"strings"

	"baybook/site/finding"
)

var andOr = &Rule{
	Name:     "and-or",
	Severity: finding.Warning,
	Doc: `Neither and/or nor etc. stands in a step

Both leave the choice to the reader without saying so.

Bad:

	## Steps

	1. Clean the glass and/or the frame.

Good:

	## Steps

	1. Clean the glass and the frame.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.kind != stepText && t.message == nil {
				continue
			}
			for _, bad := range [...]string{"and/or", "etc."} {
				if at := strings.Index(t.Source, bad); at >= 0 {
					p.Report(t.prose.Span(at, at+len(bad)), "“"+bad+"” leaves the choice open", "say which, or list them")
				}
			}
		}
	},
}
