package rule

import (
	"fmt"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var hazardUnguarded = &check.Rule{
	Name: "hazard-unguarded",
	Firm: true,
	Doc: `A hazard that the sheet shows has a safety message

The words of the steps and of "Prove it", the captions, the title, the tools and
the materials show which hazards of content/hazards.yaml are present; the front
matter's hazards adds those that words cannot show. Where the declared work of a
step brings a hazard, or the front matter names it, the build writes the message.
Any other needs one of the author's that carries its title. A step whose whole action is another procedure, and a
job, bring that procedure's hazards along; what is waived there is not waived
here.

Where a hazard cannot be met although a word points to it, waive it at that step
in the front matter: waive: [{hazard: its-id, step: 4, reason: why, by: name}].
The reason is printed at the step.`,
	Check: func(p *check.Pass) {
		for _, h := range p.Facts.ShownHazards() {
			places := p.Facts.OpenPlaces(h)
			if len(places) == 0 || p.Facts.SpeaksOf(h) || p.Facts.AllIncluded(h) {
				continue
			}
			at := places[0]
			p.Report(at.At, "“"+at.Words+"” shows the hazard “"+h.Title+"”, and no safety message speaks of it",
				adviseMessage(h, &at), otherPlaces(p.Sheet.Source, places[1:]))
		}
		broughtAlong(p)
	},
}

// adviseMessage says which message is missing and where it belongs.
func adviseMessage(h *sheet.Hazard, at *check.ShownHazard) string {
	where := "before the steps"
	if at.Step != nil {
		where = fmt.Sprintf("in step %d or before it", at.Step.Number)
	} else if !at.Whole {
		where = "above this line"
	}
	text := "declare the work with a link on the verb, so that the build writes the message; or put a message " + where + ": > **" + at.Least.String() + ": " + h.Title + ".**"
	if h.Message() != "" {
		text += " " + h.Message()
	}
	return text + " If it cannot be met here, waive " + h.ID + " with a reason"
}

// otherPlaces points at up to three more places.
func otherPlaces(src *finding.Source, places []check.ShownHazard) func(*finding.Finding) {
	return func(f *finding.Finding) {
		for i, p := range places {
			if i == 3 {
				break
			}
			check.WithNote(src, p.At.Start, "“"+p.Words+"” shows it too")(f)
		}
	}
}

// broughtAlong reports the hazards of included and merged sheets that are
// answered neither there nor here.
func broughtAlong(p *check.Pass) {
	bring := func(target *sheet.Sheet, step *sheet.Step, at sheet.Span) {
		f := p.Shared.HazardsOf(target)
		for _, h := range f.ShownHazards() {
			if f.SpeaksOf(h) || f.AllIncluded(h) || p.Facts.SpeaksOf(h) || check.WaiverAt(p.Sheet, h, step) != nil {
				continue
			}
			place := f.PlacesOf(h)[0]
			message := target.Front.Number + " brings the hazard “" + h.Title + "” along, and has no safety message on it"
			note := check.WithNote(target.Source, place.At.Start, "“"+place.Words+"” shows it")
			if w := check.WaiverAt(target, h, place.Step); w != nil {
				message = target.Front.Number + " brings the hazard “" + h.Title + "” along, which is waived there and not here"
				note = check.WithNote(target.Source, w.Span.Start, "waived there: "+w.Reason)
			}
			p.Report(at, message, "put a message on it into this sheet, or waive "+h.ID+" here too, with a reason", note)
		}
	}
	for _, step := range p.Sheet.Steps {
		if target, link := p.Facts.Included(step); target != nil {
			bring(target, step, link.Span)
		}
	}
	for _, link := range p.Sheet.Work {
		if target := p.Book.Linked(p.Sheet, link); target != nil && target != p.Sheet {
			bring(target, nil, link.Span)
		}
	}
}
