package rule

import (
	"baybook/site/check"
)

var injuryAndPropertyMixed = &check.Rule{
	Name: "injury-and-property-mixed",
	Firm: true,
	Doc: `A message speaks of injury or of damage, not of both

A reader who has skipped the scratch has skipped the hand with it. Two messages
cost one line more.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			injury, property := "", ""
			for i, h := range p.Facts.HazardsNamed(m) {
				switch {
				case h == nil:
				case h.Injury:
					injury = m.Titles[i].Text
				default:
					property = m.Titles[i].Text
				}
			}
			if injury != "" && property != "" {
				p.Report(m.Span, "the message mixes “"+injury+"”, which can injure, with “"+property+"”, which cannot", "make two messages of it, the graver first")
			}
		}
	},
}
