package check

import (
	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var toolsNamed = &Rule{
	Name:     "tools-named",
	Severity: finding.Warning,
	Doc: `Protective equipment that a message asks for is in the tools

What is not laid out before step 1 is not worn at step 7.

Bad:

	tools: [key]

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.

Good:

	tools: [key, safety glasses]

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.
`,
	Check: func(p *Pass) {
		if p.Sheet.Front.Kind != sheet.Procedure {
			return
		}
		for i, set := range p.reader.lexicon.wear {
			if !listed(set, p.facts.front.tools) && !listed(set, p.facts.front.materials) {
				p.wornUnlisted(i, set)
			}
		}
	},
}

// listed reports whether any text of a list holds a phrase of the set.
func listed(set *phrase.Set, texts []*phrase.Text) bool {
	for _, t := range texts {
		if set.Has(t, phrase.Sentence{Last: len(t.Words)}, phrase.Said) {
			return true
		}
	}
	return false
}

// wornUnlisted reports the first message that asks for equipment of one kind.
func (p *Pass) wornUnlisted(kind int, set *phrase.Set) {
	for _, m := range p.Sheet.Messages {
		for _, t := range p.facts.messageTexts[m] {
			for _, s := range t.Sentences {
				for _, hit := range set.Find(t.Text, s, phrase.Shown) {
					p.Report(t.span(hit.First, hit.Last), "the message asks for "+protections[kind].what+", and the tools name none", "add it to tools, so that it is laid out before step 1")
					return
				}
			}
		}
	}
}
