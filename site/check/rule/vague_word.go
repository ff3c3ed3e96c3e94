package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var vagueWord = &check.Rule{
	Name:     "vague-word",
	Severity: finding.Warning,
	Doc: `Steps and messages give amounts that can be checked

"As required", "properly", "tight enough" mean something else to each reader.
Give a number, a place, or what it looks like when it is right.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			if t.Kind != check.StepText && t.Message == nil && !t.Under(sheet.ProveIt) {
				continue
			}
			for _, s := range t.Sentences {
				for _, hit := range p.Shared.Lexicon.Vague.Find(t.Text, s, english.Said) {
					p.Report(t.Span(hit.First, hit.Last), "“"+t.Source[t.Words[hit.First].Start:t.Words[hit.Last-1].End]+"” means something else to each reader", "give a number, a place, or what it looks like when it is right")
				}
			}
		}
	},
}
