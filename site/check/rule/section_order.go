package rule

import (
	"slices"
	"strings"

	"baybook/site/check"
)

var sectionOrder = &check.Rule{
	Name: "section-order",
	Doc: `The sections of a kind stand in their order, once each

Every procedure reads the same way: Before you start, Steps, Prove it, Hand
over, Check yourself, Sources. Free sections may stand between them.`,
	Check: func(p *check.Pass) {
		order := plans[p.Sheet.Front.Kind].order
		last, lastTitle := -1, ""
		var seen []string
		for _, sec := range p.Sheet.Sections {
			at := slices.IndexFunc(order, func(t string) bool { return strings.EqualFold(t, sec.Title) })
			if at < 0 {
				continue
			}
			switch {
			case slices.Contains(seen, order[at]):
				p.Report(sec.Span, "the section “"+sec.Title+"” stands twice", "make one of the two")
			case at < last:
				p.Report(sec.Span, "“"+sec.Title+"” stands behind “"+lastTitle+"”", "order the sections: "+strings.Join(order, ", "))
			default:
				last, lastTitle = at, sec.Title
			}
			if order[at] != sec.Title {
				p.Report(sec.Span, "the heading “"+sec.Title+"” is written “"+order[at]+"” in this book", "write ## "+order[at], check.WithFix("write "+order[at], sec.Span, order[at]))
			}
			seen = append(seen, order[at])
		}
	},
}
