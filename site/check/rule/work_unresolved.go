package rule

import (
	"fmt"
	"strings"

	"baybook/site/check"
	"baybook/site/check/work"
	"baybook/site/sheet"
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
		p.Report(span, fmt.Sprintf("“%s” of step %d can mean %s%s", s.Doubt.Word, number, strings.Join(s.Doubt.Acts, " or "), understood(p, own)),
			offerWays(s.Doubt.Acts, s.Doubt.Word))
		return
	}
	word := own.Text.Source[own.Words[0].Start:own.Words[0].End]
	span := own.Span(0, 1)
	p.Report(span, fmt.Sprintf("what step %d does is not clear: no verb of it is in the lists of work%s", number, understood(p, own)),
		offerWays(p.Shared.WorkWords.Ways(word), word))
}

// offerWays offers a link for each act that a verb may mean.
func offerWays(acts []string, verb string) string {
	if len(acts) == 0 {
		return "write a verb that an act of " + sheet.WorkFile + " goes by, or add “" + strings.ToLower(verb) + "” to the words of the act that it is"
	}
	const most = 5
	var links []string
	for _, act := range acts[:min(len(acts), most)] {
		links = append(links, "["+verb+"]("+work.Scheme+act+")")
	}
	return "say which with a link on the verb: " + strings.Join(links, " or ")
}

// understood says what the words of a step were taken for, act apart.
func understood(p *check.Pass, own *check.Passage) string {
	var list []string
	for _, u := range p.Shared.WorkWords.ReadText(own.Text) {
		for _, part := range []struct {
			kind work.Kind
			ids  []string
		}{{work.Thing, u.Things}, {work.Tool, u.Tools}, {work.State, u.State}} {
			for _, id := range part.ids {
				list = append(list, part.kind.String()+" "+id)
			}
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "; understood: " + strings.Join(list, ", ")
}
