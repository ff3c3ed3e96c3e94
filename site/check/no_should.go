package check

import (
	"baybook/site/finding"
)

var noShould = &Rule{
	Name:     "no-should",
	Severity: finding.Warning,
	Doc: `Steps and messages say what is, not what should be

"Should" leaves open whether it must. Write an order, or must, or may.

Bad:

	## Steps

	1. Look at the lamp. It should light.

Good:

	## Steps

	1. Look at the lamp. It lights.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.step == nil && t.message == nil && !t.in("Prove it") {
				continue
			}
			for i, w := range t.Words {
				if w.Lower == "should" {
					p.Report(t.span(i, i+1), "“should” leaves open whether it must", "write an order, or must, or may")
				}
			}
		}
	},
}
