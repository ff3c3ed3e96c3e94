package rule

import (
	"fmt"
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/sheet"
)

var waiver = &check.Rule{
	Name: "waiver",
	Firm: true,
	Doc: `A waiver names a known hazard or rule, and is needed

A waiver sets a hazard aside at one step, or a rule for one sheet, with a reason
and a name that are printed there. One that names nothing, or that nothing calls for any more, hides
what it was for. Rules on numbers and links, and all that keep people from harm, cannot be waived.`,
	Check: func(p *check.Pass) {
		var ids []string
		for _, h := range p.Book.Register.Hazards {
			ids = append(ids, h.ID)
		}
		for _, w := range p.Sheet.Front.Waivers {
			switch {
			case w.Hazard != "":
				hazardWaiver(p, &w, ids)
			case check.Named(p.Shared.Rules, w.Rule) == nil:
				p.Report(w.Span, "there is no rule “"+w.Rule+"” to waive", check.Suggest(w.Rule, check.RuleNames(p.Shared.Rules), "use the name that stands in brackets in the finding"))
			case !check.Waivable(check.Named(p.Shared.Rules, w.Rule)):
				p.Report(w.Span, "the rule "+w.Rule+" cannot be waived", "take the waiver out, and correct what the rule finds")
			}
		}
	},
}

// hazardWaiver checks a waiver of a hazard.
func hazardWaiver(p *check.Pass, w *sheet.Waiver, ids []string) {
	h := p.Book.Register.Named(w.Hazard)
	if h == nil {
		p.Report(w.Span, "the register has no hazard with the id “"+w.Hazard+"”", check.Suggest(w.Hazard, ids, "use an id of content/hazards.yaml"))
		return
	}
	where := "outside the steps of the sheet"
	var step *sheet.Step
	if w.Step > 0 {
		if w.Step > len(p.Sheet.Steps) {
			p.Report(w.Span, fmt.Sprintf("the sheet has no step %d", w.Step), "name the step at which the hazard is not there, or take the waiver out")
			return
		}
		step = p.Sheet.Steps[w.Step-1]
		where = fmt.Sprintf("at step %d", w.Step)
	}
	for _, place := range p.Facts.PlacesOf(h) {
		if place.Step == step {
			return
		}
	}
	for _, g := range p.Facts.WaivedGlimpses() {
		if g.Hazard == h && g.Step == step {
			return
		}
	}
	if !brings(p, h, step) {
		p.Report(w.Span, "nothing "+where+" shows “"+h.Title+"”, so there is nothing to waive", "take the waiver out, or name the step that shows it"+stepsShowing(p, h))
	}
}

// stepsShowing lists the steps that show a hazard, in brackets.
func stepsShowing(p *check.Pass, h *sheet.Hazard) string {
	var list []string
	for _, place := range p.Facts.PlacesOf(h) {
		if place.Step != nil {
			list = append(list, "step: "+strconv.Itoa(place.Step.Number))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return " (" + strings.Join(list, ", ") + ")"
}

// brings reports whether a sheet that a step includes, or, where step is nil,
// one that a job merges, shows a hazard.
func brings(p *check.Pass, h *sheet.Hazard, step *sheet.Step) bool {
	shows := func(target *sheet.Sheet) bool {
		return target != nil && len(p.Shared.HazardsOf(target).PlacesOf(h)) > 0
	}
	if step != nil {
		target, _ := p.Facts.Included(step)
		return shows(target)
	}
	for _, link := range p.Sheet.Work {
		if shows(p.Book.Linked(p.Sheet, link)) {
			return true
		}
	}
	return false
}
