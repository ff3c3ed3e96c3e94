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
vehicle maker. The row's own avoidance, which the build adds, says it too, and
several messages of one sheet on the same hazard may share it between them.`,
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
				added := []*check.Passage{{Text: p.Facts.Words.Read(h.Avoid)}}
				var missing []string
				for k := range p.Shared.Register.Demands[p.Shared.Register.Index(h)] {
					s := &p.Shared.Register.Demands[p.Shared.Register.Index(h)][k]
					if !s.SaidIn(texts) && !s.SaidIn(added) {
						missing = append(missing, s.What)
					}
				}
				if len(missing) > 0 {
					do := "add it"
					if h.Message() != "" {
						do = "add it, as in: " + h.Message()
					}
					p.Report(m.Titles[i].Span, "the message on “"+h.Title+"” does not say: "+strings.Join(missing, "; "), do)
				}
			}
		}
	},
}
