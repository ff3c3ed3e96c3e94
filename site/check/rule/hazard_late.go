package rule

import (
	"fmt"

	"baybook/site/check"
)

var hazardLate = &check.Rule{
	Name: "hazard-late",
	Firm: true,
	Doc: `A safety message stands before the step that it guards

A warning read after the step has come too late. A message in a section before
the steps guards all of them; one inside a step guards that step and later
ones, and the site shows it before the step's sentence.`,
	Check: func(p *check.Pass) {
		for _, h := range p.Facts.ShownHazards() {
			messages := p.Facts.MessagesOn(h)
			if len(messages) == 0 {
				continue
			}
			for _, place := range p.Facts.OpenPlaces(h) {
				guarded := p.Facts.IncludedGuards(&place)
				for _, m := range messages {
					guarded = guarded || check.Guards(m, &place)
				}
				if guarded {
					continue
				}
				where := "above this line"
				if place.Step != nil {
					where = fmt.Sprintf("into step %d or before it", place.Step.Number)
				}
				p.Report(place.At, "“"+place.Words+"” shows the hazard “"+h.Title+"” before its safety message stands",
					"move the message "+where, check.WithNote(p.Sheet.Source, messages[0].Span.Start, "the message stands here"))
				break // the first place says it
			}
		}
	},
}
