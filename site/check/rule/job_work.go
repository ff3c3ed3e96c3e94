package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var jobWork = &check.Rule{
	Name: "job-work",
	Doc: `A job composes sheets that are there, each once

The build merges their tools, materials, minutes, hazards and readings into one
plan. A job is not made of jobs, and nothing stands in it twice unawares.`,
	Check: func(p *check.Pass) {
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
				p.Report(l.Span, target.File+" stands in the work twice", "take one of the two out", check.WithNote(p.Sheet.Source, seen[target].Span.Start, "first here"))
			default:
				seen[target] = l
			}
		}
	},
}
