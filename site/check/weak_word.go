package check

import (
	"baybook/site/sheet"
)

// namedIn lists the hazards that a message names, in the order of its titles;
// nil for a title that the register does not know.
func (p *Pass) namedIn(m *sheet.Message) []*sheet.Hazard {
	list := make([]*sheet.Hazard, len(m.Titles))
	for i, t := range m.Titles {
		list[i] = p.Book.Register.Titled(t.Text)
	}
	return list
}

var weakWord = &Rule{
	Name: "weak-word",
	Doc: `A message carries at least the signal word of its gravest hazard

The register gives each hazard its least word (ANSI Z535.6: DANGER will kill or
injure gravely if not avoided, WARNING could, CAUTION could injure lightly,
NOTICE is not about injury). A sheet may raise the word, never lower it. Some
hazards call for more under circumstances that the step names.

Bad:

	## Before you start

	> **CAUTION: Exhaust gas.** Exhaust gas fills a bay and kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas fills a bay and kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			for i, h := range p.namedIn(m) {
				if h == nil || h.Least <= m.Word || m.Word == sheet.Notice && h.Injury {
					continue // NOTICE for an injury has a rule of its own
				}
				p.Report(m.WordSpan, "“"+m.Titles[i].Text+"” needs at least "+h.Least.String()+", and this message says "+m.Word.String(),
					"write "+h.Least.String()+", or give the hazard a message of its own")
			}
		}
		p.raisedWords()
	},
}

// raisedWords reports places that call for a graver word than any message
// that guards them carries.
func (p *Pass) raisedWords() {
	for _, place := range p.facts.present {
		if place.Least <= place.Hazard.Least || waives(p.Sheet, place.Hazard) != nil {
			continue
		}
		messages := p.facts.messagesOn(place.Hazard)
		enough := len(messages) == 0 || p.facts.includedGuards(&place)
		for _, m := range messages {
			enough = enough || guards(m, &place) && m.Word >= place.Least
		}
		if !enough {
			p.Report(place.At, "here “"+place.Hazard.Title+"” needs "+place.Least.String()+", and its message says "+messages[0].Word.String(),
				"write "+place.Least.String()+" in the message that guards this step", withNote(p.Sheet.Source, messages[0].WordSpan.Start, "the message"))
		}
	}
}
