package check

import (
	"baybook/site/check/phrase"
	"baybook/site/finding"
)

var imperativeFirst = &Rule{
	Name:     "imperative-first",
	Severity: finding.Warning,
	Doc: `A step starts with what to do

The first word of a step is a verb, or a condition stands before it: "If the
lamp stays on, stop." A tech reads the first word and acts.

Bad:

	## Steps

	1. The lamp is switched on.

Good:

	## Steps

	1. Switch the lamp on.
`,
	Check: func(p *Pass) {
		p.actions(func(t *passage, s phrase.Sentence) {
			words := t.In(s)
			at, ok := action(words)
			if ok && p.reader.lexicon.orders(words[at:]) {
				return
			}
			end := s.First + at + 1
			p.Report(t.span(s.First+at, end), "the step does not start with what to do", "start with a verb, such as Remove or Measure, or with If or When and a comma")
		})
	},
}
