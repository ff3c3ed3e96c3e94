package rule

import (
	"baybook/site/check"
)

var courseNeeds = &check.Rule{
	Name: "course-needs",
	Firm: true,
	Doc: `What a sheet needs is there, and does not need it back

needs: in the front matter names the sheets that are learned before this one, by
their numbers. From them the book makes its course: no number may be missing,
and no two sheets may wait for each other.`,
	Check: func(p *check.Pass) {
		at := p.Sheet.Front.Place("needs")
		for _, number := range p.Sheet.Front.Needs {
			if p.Book.Numbered(number) == nil {
				p.Report(at, "there is no sheet with the number "+number, check.Suggest(number, numbersOf(p.Book), "correct the number"))
			}
		}
		if number, circle := p.Book.NeedsItself(p.Sheet); circle {
			p.Report(at, "the sheet needs "+number+", and that leads back here", "take one of the two out of needs: learn first what stands by itself")
		}
	},
}
