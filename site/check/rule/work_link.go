package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/sheet"
)

var workLink = &check.Rule{
	Name: "work-link",
	Firm: true,
	Doc: `A link that declares work names what is in the lists

[Drill](do:drill?at=floor&with=step-bit) says what a step does: the act, at what,
near what, with what, in which state. The names are those of content/work.yaml,
several with commas. The verb is one that the act goes by: a link that calls
drilling a look would hide what the step does. The rest of the step stays as it is, and the page shows the
words alone.`,
	Check: func(p *check.Pass) {
		for _, f := range p.Facts.Work.Faults {
			p.Report(f.Link.Link, f.Message, f.Do)
		}
		for _, do := range p.Sheet.Does {
			if d, faults := p.Book.Work.Parse(do.Dest); len(faults) == 0 && !p.Shared.WorkWords.Goes(do.Words, d.Act) {
				otherVerb(p, do, d.Act)
			}
			if do.Step == nil {
				p.Report(do.Link, "a link that declares work stands outside the steps", "put it on the verb of the step that does the work")
			}
		}
	},
}

// otherVerb reports whether a verb does not go by the act of its link.
func otherVerb(p *check.Pass, do *sheet.Do, act string) {
	advice := "add it to words of " + act + " in " + sheet.WorkFile + ", or declare another act"
	if ways := p.Shared.WorkWords.Ways(do.Words); len(ways) > 0 {
		advice = "it goes by " + strings.Join(ways, ", ") + "; declare that, or " + advice
	}
	p.Report(do.Span, "is “"+do.Words+"” a way to "+act+"?", advice)
}
