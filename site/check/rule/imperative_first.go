package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
)

var imperativeFirst = &check.Rule{
	Name:     "imperative-first",
	Severity: finding.Warning,
	Doc: `A step starts with what to do

The first word of a step is a verb, or a condition stands before it: "If the
lamp stays on, stop." A tech reads the first word and acts.`,
	Check: func(p *check.Pass) {
		p.Facts.Actions(func(t *check.Passage, s english.Sentence) {
			words := t.In(s)
			at, ok := english.Action(words)
			if ok && p.Shared.Lexicon.Orders(words[at:]) {
				return
			}
			end := s.First + at + 1
			p.Report(t.Span(s.First+at, end), "the step does not start with what to do", "start with a verb, such as Remove or Measure, or with If or When and a comma")
		})
	},
}
