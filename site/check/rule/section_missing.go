package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

// A plan is the sections that a kind of sheet has, in their order.
var plans = map[sheet.Kind]struct{ order, required []string }{
	sheet.Procedure: {
		order:    []string{"Before you start", "Steps", "Prove it", "Hand over", "Check yourself", "Sources"},
		required: []string{"Steps", "Prove it", "Sources"},
	},
	sheet.Guide:     {order: []string{"Check yourself", "Sources"}, required: []string{"Sources"}},
	sheet.Reference: {order: []string{"Check yourself", "Sources"}, required: []string{"Sources"}},
	sheet.Job:       {order: []string{"Work", "Sources"}, required: []string{"Work", "Sources"}},
}

var sectionMissing = &check.Rule{
	Name: "section-missing",
	Doc: `The sheet has the sections of its kind

A procedure has Steps, a proof of the work ("Prove it") and Sources; a guide and
a reference have Sources; a job has Work and Sources. Before the first section
stands a sentence that says what the sheet gives. The sections hold something.`,
	Check: func(p *check.Pass) {
		s := p.Sheet
		for _, title := range plans[s.Front.Kind].required {
			if s.Section(title) == nil {
				p.Report(s.Front.Place("kind"), "a "+string(s.Front.Kind)+" needs a section “"+title+"”, and this one has none", "add ## "+title)
			}
		}
		if first := s.Root.FirstChild(); s.Front.Kind != "" && (first == nil || isSection(first)) {
			p.Report(s.Front.Place("title"), "no sentence before the first section says what the sheet gives", "write one or two: what it gives, and when to use it")
		}
		if steps := s.Section("Steps"); steps != nil && len(s.Steps) == 0 {
			p.Report(steps.Span, "the section Steps holds no numbered list", "write the steps as 1. 2. 3.")
		}
		if work := s.Section("Work"); s.Front.Kind == sheet.Job && work != nil && len(s.Work) == 0 {
			p.Report(work.Span, "the section Work names no sheets", "write a numbered list, each item starting with a link to a sheet")
		}
		for _, sec := range s.Sections {
			if sec.FirstChild() == nil {
				p.Report(sec.Span, "the section “"+sec.Title+"” is empty", "fill it, or take its heading out")
			}
		}
	},
}

func isSection(n any) bool { _, ok := n.(*sheet.Section); return ok }
