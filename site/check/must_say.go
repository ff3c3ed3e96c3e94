package check

import "strings"

var mustSay = &Rule{
	Name: "must-say",
	Doc: `A message says what the register demands for its hazard

For each hazard content/hazards.yaml lists what its message must say: a
protective device, an order of work, a value with its unit, a reference to the
vehicle maker. Several messages of one sheet on the same hazard may share it
between them.

Bad:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Take care in the bay.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.
`,
	Check: func(p *Pass) {
		done := make(map[string]bool)
		for _, m := range p.Sheet.Messages {
			for i, h := range p.namedIn(m) {
				if h == nil || done[h.ID] {
					continue
				}
				done[h.ID] = true
				var texts []*passage
				for _, other := range p.facts.messagesOn(h) {
					texts = append(texts, p.facts.messageTexts[other]...)
				}
				var missing []string
				for k := range p.reader.register.say[p.reader.register.index(h)] {
					s := &p.reader.register.say[p.reader.register.index(h)][k]
					if !s.said(texts) {
						missing = append(missing, s.what)
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
