package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var waiver = &check.Rule{
	Name: "waiver",
	Firm: true,
	Doc: `A waiver names a known hazard or rule, and is needed

A waiver sets a hazard or a rule aside for one sheet, with a reason that is
printed on it. One that names nothing, or that nothing calls for any more, hides
what it was for. Rules on numbers and links, and a few others, cannot be waived.`,
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
	for _, present := range p.Facts.Present {
		if present.Hazard == h {
			return
		}
	}
	if !brings(p, h) {
		p.Report(w.Span, "nothing in the sheet shows “"+h.Title+"”, so there is nothing to waive", "take the waiver out")
	}
}

// brings reports whether an included or merged sheet shows a hazard.
func brings(p *check.Pass, h *sheet.Hazard) bool {
	shows := func(target *sheet.Sheet) bool {
		return target != nil && len(p.Shared.HazardsOf(target).PlacesOf(h)) > 0
	}
	for _, step := range p.Sheet.Steps {
		if target, _ := p.Facts.Included(step); shows(target) {
			return true
		}
	}
	for _, link := range p.Sheet.Work {
		if shows(p.Book.Linked(p.Sheet, link)) {
			return true
		}
	}
	return false
}
