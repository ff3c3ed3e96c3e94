package rule

import (
	"fmt"
	"strings"

	"baybook/site/check"
	"baybook/site/check/work"
)

var workUnresolved = &check.Rule{
	Name: "work-unresolved",
	Firm: true,
	Doc: `It is clear what each step does

The build follows the vehicle through the steps, so it has to know what each
does. Most verbs say so. Where a verb means several things, or none of the lists
in content/work.yaml, a link on the verb declares it:
[Take](do:undo?at=battery-negative) the negative off. A step that does another
procedure as its whole action needs none.`,
	Check: func(p *check.Pass) {
		w := &p.Facts.Work
		for i, s := range w.Steps {
			own := w.Own[i]
			if own == nil || len(own.Words) == 0 || s.Doubt == nil && !s.None {
				continue
			}
			if target, _ := p.Facts.Included(p.Sheet.Steps[i]); target != nil {
				continue
			}
			unresolved(p, p.Sheet.Steps[i].Number, own, &s)
		}
	},
}

// unresolved reports a step of which it is not clear what it does.
func unresolved(p *check.Pass, number int, own *check.Passage, s *work.Step) {
	if s.Doubt != nil {
		span := own.Prose.Span(s.Doubt.Start, s.Doubt.End)
		link := "[" + s.Doubt.Word + "](do:" + s.Doubt.Acts[0] + ")"
		p.Report(span, fmt.Sprintf("“%s” of step %d can mean %s", s.Doubt.Word, number, strings.Join(s.Doubt.Acts, " or ")),
			"say which with a link on the verb, such as "+link)
		return
	}
	word := own.Text.Source[own.Words[0].Start:own.Words[0].End]
	span := own.Span(0, 1)
	p.Report(span, fmt.Sprintf("what step %d does is not clear: no verb of it is in the lists of work", number),
		"declare it with a link on its verb, such as ["+word+"](do:handle) or ["+word+"](do:note) where nothing is moved")
}
