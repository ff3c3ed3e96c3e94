package check

import "fmt"

var hazardLate = &Rule{
	Name: "hazard-late",
	Doc: `A safety message stands before the step that it guards

A warning read after the step has come too late. A message in a section before
the steps guards all of them; one inside a step guards that step and later
ones, and the site shows it before the step's sentence.

Bad:

	## Steps

	1. Start the engine.
	2. Read the voltage at the battery.

	   > **WARNING: Exhaust gas.** Exhaust gas fills a bay and kills without a smell.
	   > Run the engine outdoors or with extraction, for 3 min at most.

Good:

	## Steps

	1. Start the engine.

	   > **WARNING: Exhaust gas.** Exhaust gas fills a bay and kills without a smell.
	   > Run the engine outdoors or with extraction, for 3 min at most.

	2. Read the voltage at the battery.
`,
	Check: func(p *Pass) {
		for _, h := range p.facts.shownHazards() {
			messages := p.facts.messagesOn(h)
			if len(messages) == 0 || waives(p.Sheet, h) != nil {
				continue
			}
			for _, place := range p.facts.placesOf(h) {
				guarded := p.facts.includedGuards(&place)
				for _, m := range messages {
					guarded = guarded || guards(m, &place)
				}
				if guarded {
					continue
				}
				where := "above this line"
				if place.Step != nil {
					where = fmt.Sprintf("into step %d or before it", place.Step.Number)
				}
				p.Report(place.At, "“"+place.Words+"” shows the hazard “"+h.Title+"” before its safety message stands",
					"move the message "+where, withNote(p.Sheet.Source, messages[0].Span.Start, "the message stands here"))
				break // the first place says it
			}
		}
	},
}
