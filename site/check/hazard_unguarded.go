package check

import (
	"fmt"
	"strings"

	"baybook/site/finding"
	"baybook/site/sheet"
)

var hazardUnguarded = &Rule{
	Name: "hazard-unguarded",
	Doc: `A hazard that the sheet shows has a safety message

The words of the steps and of "Prove it", the captions, the title, the tools and
the materials show which hazards of content/hazards.yaml are present; the front
matter's hazards adds those that words cannot show. Each needs a safety message
that carries its title. A step whose whole action is another procedure, and a
job, bring that procedure's hazards along; what is waived there is not waived
here.

Where a hazard cannot be met in this work although a word points to it, waive
it in the front matter: waive: [{hazard: its-id, reason: why}]. The reason is
printed on the sheet.

Bad:

	## Steps

	1. Start the engine.

Good:

	## Steps

	1. Start the engine.

	   > **WARNING: Exhaust gas.** Exhaust gas fills a bay and kills without a smell.
	   > Run the engine outdoors or with extraction, for 3 min at most.
`,
	Check: func(p *Pass) {
		for _, h := range p.facts.shownHazards() {
			if len(p.facts.messagesOn(h)) > 0 || waives(p.Sheet, h) != nil || p.facts.allIncluded(h) {
				continue
			}
			places := p.facts.placesOf(h)
			at := places[0]
			p.Report(at.At, "“"+at.Words+"” shows the hazard “"+h.Title+"”, and no safety message speaks of it",
				adviseMessage(h, &at), otherPlaces(p.Sheet.Source, places[1:]))
		}
		p.broughtAlong()
	},
}

// adviseMessage says which message is missing and where it belongs.
func adviseMessage(h *sheet.Hazard, at *Present) string {
	where := "before the steps"
	if at.Step != nil {
		where = fmt.Sprintf("in step %d or before it", at.Step.Number)
	} else if !at.Whole {
		where = "above this line"
	}
	text := "put a message " + where + ": > **" + at.Least.String() + ": " + h.Title + ".**"
	if h.Message != "" {
		text += " " + strings.Join(strings.Fields(h.Message), " ")
	}
	return text + " If it cannot be met here, waive " + h.ID + " with a reason"
}

// otherPlaces points at up to three more places.
func otherPlaces(src *finding.Source, places []Present) func(*finding.Finding) {
	return func(f *finding.Finding) {
		for i, p := range places {
			if i == 3 {
				break
			}
			withNote(src, p.At.Start, "“"+p.Words+"” shows it too")(f)
		}
	}
}

// broughtAlong reports the hazards of included and merged sheets that are
// answered neither there nor here.
func (p *Pass) broughtAlong() {
	bring := func(target *sheet.Sheet, at sheet.Span) {
		f := p.reader.showsOf(target)
		for _, h := range f.shownHazards() {
			if len(f.messagesOn(h)) > 0 || f.allIncluded(h) || len(p.facts.messagesOn(h)) > 0 || waives(p.Sheet, h) != nil {
				continue
			}
			place := f.placesOf(h)[0]
			message := target.Front.Number + " brings the hazard “" + h.Title + "” along, and has no safety message on it"
			note := withNote(target.Source, place.At.Start, "“"+place.Words+"” shows it")
			if w := waives(target, h); w != nil {
				message = target.Front.Number + " brings the hazard “" + h.Title + "” along, which is waived there and not here"
				note = withNote(target.Source, w.Span.Start, "waived there: "+w.Reason)
			}
			p.Report(at, message, "put a message on it into this sheet, or waive "+h.ID+" here too, with a reason", note)
		}
	}
	for _, step := range p.Sheet.Steps {
		if target, link := p.facts.included(step); target != nil {
			bring(target, link.Span)
		}
	}
	for _, link := range p.Sheet.Work {
		if target := p.Book.Linked(p.Sheet, link); target != nil && target != p.Sheet {
			bring(target, link.Span)
		}
	}
}
