package check

import (
	"baybook/calculators/calc"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var waiver = &Rule{
	Name: "waiver",
	Firm: true,
	Doc: `A waiver names a known hazard or rule, and is needed

A waiver sets a hazard or a rule aside for one sheet, with a reason that is
printed on it. One that names nothing, or that nothing calls for any more, hides
what it was for. Rules on numbers and links, and a few others, cannot be waived.

Bad:

	waive: [{hazard: exhaust-gases, reason: the engine stays off}]

Good:

	waive: []
`,
	Check: func(p *Pass) {
		var ids []string
		for _, h := range p.Book.Register.Hazards {
			ids = append(ids, h.ID)
		}
		for _, w := range p.Sheet.Front.Waivers {
			switch {
			case w.Hazard != "":
				p.hazardWaiver(&w, ids)
			case named(p.reader.rules, w.Rule) == nil:
				p.Report(w.Span, "there is no rule “"+w.Rule+"” to waive", suggest(w.Rule, ruleNames(p.reader.rules), "use the name that stands in brackets in the finding"))
			case !waivable(named(p.reader.rules, w.Rule)):
				p.Report(w.Span, "the rule "+w.Rule+" cannot be waived", "take the waiver out, and correct what the rule finds")
			}
		}
	},
}

// waivable reports whether a waiver can set a rule aside.
func waivable(r *Rule) bool { return r != nil && !r.Firm && r.Check != nil }

func ruleNames(rules []*Rule) []string {
	var list []string
	for _, r := range rules {
		list = append(list, r.Name)
	}
	return list
}

// hazardWaiver checks a waiver of a hazard.
func (p *Pass) hazardWaiver(w *sheet.Waiver, ids []string) {
	h := p.Book.Register.Named(w.Hazard)
	if h == nil {
		p.Report(w.Span, "the register has no hazard with the id “"+w.Hazard+"”", suggest(w.Hazard, ids, "use an id of content/hazards.yaml"))
		return
	}
	for _, present := range p.facts.present {
		if present.Hazard == h {
			return
		}
	}
	if !p.brings(h) {
		p.Report(w.Span, "nothing in the sheet shows “"+h.Title+"”, so there is nothing to waive", "take the waiver out")
	}
}

// brings reports whether an included or merged sheet shows a hazard.
func (p *Pass) brings(h *sheet.Hazard) bool {
	shows := func(target *sheet.Sheet) bool {
		return target != nil && len(p.reader.showsOf(target).placesOf(h)) > 0
	}
	for _, step := range p.Sheet.Steps {
		if target, _ := p.facts.included(step); shows(target) {
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

// suggest gives the nearest name that is known, or the other advice.
func suggest(given string, known []string, otherwise string) string {
	if near := calc.Nearest(given, known); near != "" {
		return "did you mean " + near + "?"
	}
	return otherwise
}

// waive takes out what the sheet's waivers of rules set aside, and reports the
// waivers that set nothing aside.
func waive(s *sheet.Sheet, list finding.List) finding.List {
	if len(s.Front.Waivers) == 0 {
		return list
	}
	used := make(map[string]bool)
	kept := list[:0]
	for _, f := range list {
		waived := false
		for _, w := range s.Front.Waivers {
			if w.Rule != "" && w.Rule == f.Rule && waivable(Named(f.Rule)) {
				waived, used[w.Rule] = true, true
			}
		}
		if !waived {
			kept = append(kept, f)
		}
	}
	for _, w := range s.Front.Waivers {
		if w.Rule == "" || used[w.Rule] || !waivable(Named(w.Rule)) {
			continue
		}
		f := s.Source.At(w.Span.Start, w.Span.End)
		f.Rule, f.Message, f.Do = waiver.Name, "the rule "+w.Rule+" finds nothing in the sheet, so there is nothing to waive", "take the waiver out"
		kept = append(kept, f)
	}
	return kept
}
