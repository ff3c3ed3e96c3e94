package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var toolsNamed = &check.Rule{
	Name:     "tools-named",
	Firm:     true,
	Severity: finding.Warning,
	Doc: `Protective equipment that a message asks for is in the tools

What is not laid out before step 1 is not worn at step 7.`,
	Check: func(p *check.Pass) {
		if p.Sheet.Front.Kind != sheet.Procedure {
			return
		}
		for _, kind := range p.Shared.Lexicon.Protections {
			if !listed(kind.Set, p.Facts.Front.Tools) && !listed(kind.Set, p.Facts.Front.Materials) {
				wornUnlisted(p, kind)
			}
		}
	},
}

// listed reports whether any text of a list holds a phrase of the set.
func listed(set *english.Set, texts []*english.Text) bool {
	for _, t := range texts {
		if set.Has(t, english.Sentence{Last: len(t.Words)}, english.Said) {
			return true
		}
	}
	return false
}

// wornUnlisted reports the first message that asks for equipment of one kind.
func wornUnlisted(p *check.Pass, kind english.Protection) {
	for _, m := range p.Sheet.Messages {
		for _, t := range p.Facts.MessageTexts[m] {
			for _, s := range t.Sentences {
				for _, hit := range kind.Find(t.Text, s, english.Shown) {
					p.Report(t.Span(hit.First, hit.Last), "the message asks for "+kind.What+", and the tools name none", "add it to tools, so that it is laid out before step 1")
					return
				}
			}
		}
	}
}
