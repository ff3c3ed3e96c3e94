package check

import (
	"baybook/site/check/phrase"
	"baybook/site/finding"
)

var vagueWord = &Rule{
	Name:     "vague-word",
	Severity: finding.Warning,
	Doc: `Steps and messages give amounts that can be checked

"As required", "properly", "tight enough" mean something else to each reader.
Give a number, a place, or what it looks like when it is right.

Bad:

	## Steps

	1. Clean the glass properly.

Good:

	## Steps

	1. Clean the glass until no streak shows.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.kind != stepText && t.message == nil && !t.in("Prove it") {
				continue
			}
			for _, s := range t.Sentences {
				for _, hit := range p.reader.lexicon.vague.Find(t.Text, s, phrase.Said) {
					p.Report(t.span(hit.First, hit.Last), "“"+t.Source[t.Words[hit.First].Start:t.Words[hit.Last-1].End]+"” means something else to each reader", "give a number, a place, or what it looks like when it is right")
				}
			}
		}
	},
}
