package rule

import (
	"baybook/site/check"
)

var workLink = &check.Rule{
	Name: "work-link",
	Firm: true,
	Doc: `A link that declares work names what is in the lists

[Drill](do:drill?at=floor&with=step-bit) says what a step does: the act, at what,
near what, with what, in which state. The names are those of content/work.yaml,
several with commas. The rest of the step stays as it is, and the page shows the
words alone.`,
	Check: func(p *check.Pass) {
		for _, f := range p.Facts.Work.Faults {
			p.Report(f.Link.Link, f.Message, f.Do)
		}
		for _, do := range p.Sheet.Does {
			if do.Step == nil {
				p.Report(do.Link, "a link that declares work stands outside the steps", "put it on the verb of the step that does the work")
			}
		}
	},
}
