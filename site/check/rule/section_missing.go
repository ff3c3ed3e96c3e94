package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

// A plan is the sections that a kind of sheet has, in their order.
var plans = map[sheet.Kind]struct{ order, required []string }{
	sheet.Procedure: {
		order:    []string{sheet.BeforeYouStart, sheet.StepsTitle, sheet.ProveIt, sheet.HandOver, sheet.CheckYourself, sheet.Sources},
		required: []string{sheet.StepsTitle, sheet.ProveIt, sheet.Sources},
	},
	sheet.Guide:     {order: []string{sheet.CheckYourself, sheet.Sources}, required: []string{sheet.Sources}},
	sheet.Reference: {order: []string{sheet.CheckYourself, sheet.Sources}, required: []string{sheet.Sources}},
	sheet.Job:       {order: []string{sheet.WorkTitle, sheet.Sources}, required: []string{sheet.WorkTitle, sheet.Sources}},
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
		if steps := s.Section(sheet.StepsTitle); steps != nil && len(s.Steps) == 0 {
			p.Report(steps.Span, "the section Steps holds no numbered list", "write the steps as 1. 2. 3.")
		}
		if work := s.Section(sheet.WorkTitle); s.Front.Kind == sheet.Job && work != nil && len(s.Work) == 0 {
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
