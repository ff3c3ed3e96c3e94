package rule

import (
	"strings"

	"baybook/site/check"
)

var mustSay = &check.Rule{
	Name: "must-say",
	Firm: true,
	Doc: `A message says what the register demands for its hazard

For each hazard content/hazards.yaml lists what its message must say: a
protective device, an order of work, a value with its unit, a reference to the
vehicle maker. Several messages of one sheet on the same hazard may share it
between them.`,
	Check: func(p *check.Pass) {
		done := make(map[string]bool)
		for _, m := range p.Sheet.Messages {
			for i, h := range p.Facts.HazardsNamed(m) {
				if h == nil || done[h.ID] {
					continue
				}
				done[h.ID] = true
				var texts []*check.Passage
				for _, other := range p.Facts.MessagesOn(h) {
					texts = append(texts, p.Facts.MessageTexts[other]...)
				}
				var missing []string
				for k := range p.Shared.Register.Demands[p.Shared.Register.Index(h)] {
					s := &p.Shared.Register.Demands[p.Shared.Register.Index(h)][k]
					if !s.SaidIn(texts) {
						missing = append(missing, s.What)
					}
				}
				if len(missing) > 0 {
					do := "add it"
					if h.Message != "" {
						do = "add it, as in: " + strings.Join(strings.Fields(h.Message), " ")
					}
					p.Report(m.Titles[i].Span, "the message on “"+h.Title+"” does not say: "+strings.Join(missing, "; "), do)
				}
			}
		}
	},
}
