package check

import "baybook/site/sheet"

var jobWork = &Rule{
	Name: "job-work",
	Doc: `A job composes sheets that are there, each once

The build merges their tools, materials, minutes, hazards and readings into one
plan. A job is not made of jobs, and nothing stands in it twice unawares.

Bad:

	---
	title: A sheet
	number: EX-01
	revision: A
	date: 2026-01-02
	owner: Bench
	kind: job
	minutes: 5
	skill: apprentice
	---
	Proves that the lamp lights.

	## Work

	1. [The other sheet](other.md)
	2. [The other sheet again](other.md)

	## Sources

	- Common practice, no source.

Good:

	---
	title: A sheet
	number: EX-01
	revision: A
	date: 2026-01-02
	owner: Bench
	kind: job
	minutes: 5
	skill: apprentice
	---
	Proves that the lamp lights.

	## Work

	1. [The other sheet](other.md)

	## Sources

	- Common practice, no source.
`,
	Check: func(p *Pass) {
		seen := make(map[*sheet.Sheet]*sheet.Link)
		for _, l := range p.Sheet.Work {
			target := p.Book.Linked(p.Sheet, l)
			switch {
			case target == nil:
				if !p.Sheet.Resolve(l.Dest).Outside {
					continue // the rule on links says it
				}
				p.Report(l.Span, "the item of the work leads out of the book", "start it with a link to a sheet")
			case target.Front.Kind == sheet.Job:
				p.Report(l.Span, target.File+" is a job itself", "name its sheets one by one")
			case seen[target] != nil:
				p.Report(l.Span, target.File+" stands in the work twice", "take one of the two out", withNote(p.Sheet.Source, seen[target].Span.Start, "first here"))
			default:
				seen[target] = l
			}
		}
	},
}
