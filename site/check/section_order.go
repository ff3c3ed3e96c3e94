package check

import (
	"slices"
	"strings"
)

var sectionOrder = &Rule{
	Name: "section-order",
	Doc: `The sections of a kind stand in their order, once each

Every procedure reads the same way: Before you start, Steps, Prove it, Hand
over, Check yourself, Sources. Free sections may stand between them.

Bad:

	---
	title: A sheet
	number: EX-01
	revision: A
	date: 2026-01-02
	owner: Bench
	kind: procedure
	minutes: 5
	skill: apprentice
	tools: [key]
	materials: [label]
	---
	Proves that the lamp lights.

	## Steps

	1. Look at the lamp.

	## Sources

	- Common practice, no source.

	## Prove it

	- The lamp lights.

Good:

	## Steps

	1. Look at the lamp.
`,
	Check: func(p *Pass) {
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
				p.Report(sec.Span, "the heading “"+sec.Title+"” is written “"+order[at]+"” in this book", "write ## "+order[at], withFix("write "+order[at], sec.Span, order[at]))
			}
			seen = append(seen, order[at])
		}
	},
}
