package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var weakWord = &check.Rule{
	Name: "weak-word",
	Firm: true,
	Doc: `A message carries at least the signal word of its gravest hazard

The register gives each hazard its least word (ANSI Z535.6: DANGER will kill or
injure gravely if not avoided, WARNING could, CAUTION could injure lightly,
NOTICE is not about injury). A sheet may raise the word, never lower it. Some
hazards call for more under circumstances that the step names.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			for i, h := range p.Facts.HazardsNamed(m) {
				if h == nil || h.Least <= m.Word || m.Word == sheet.Notice && h.Injury {
					continue // NOTICE for an injury has a rule of its own
				}
				p.Report(m.WordSpan, "“"+m.Titles[i].Text+"” needs at least "+h.Least.String()+", and this message says "+m.Word.String(),
					"write "+h.Least.String()+", or give the hazard a message of its own")
			}
		}
		raisedWords(p)
	},
}

// raisedWords reports places that call for a more serious word than any
// message that guards them carries.
func raisedWords(p *check.Pass) {
	for _, place := range p.Facts.Present {
		if place.Least <= place.Hazard.Least || check.WaiverAt(p.Sheet, place.Hazard, place.Step) != nil {
			continue
		}
		messages := p.Facts.MessagesOn(place.Hazard)
		enough := len(messages) == 0 || p.Facts.IncludedGuards(&place)
		for _, m := range messages {
			enough = enough || check.Guards(m, &place) && m.Word >= place.Least
		}
		if !enough {
			p.Report(place.At, "here “"+place.Hazard.Title+"” needs "+place.Least.String()+", and its message says "+messages[0].Word.String(),
				"write "+place.Least.String()+" in the message that guards this step", check.WithNote(p.Sheet.Source, messages[0].WordSpan.Start, "the message"))
		}
	}
}
