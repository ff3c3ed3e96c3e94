package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var neverOrder = &check.Rule{
	Name: "never-order",
	Firm: true,
	Doc: `Some orders are never given

A bridged or larger fuse, a tap on brakes or restraints, a ground at a brake
pipe, work under a jack alone, an engine in a closed room: content/work.yaml
lists the orders that no sheet gives, with what to do instead. The rule reads the
declared work of the steps, and the words of steps, sections, messages, lists and
right answers. Saying that it must not be done is right. No waiver sets this
aside.`,
	Check: func(p *check.Pass) {
		reported := make(map[*sheet.Step]bool)
		for i, m := range p.Facts.Work.Moments {
			for _, b := range m.Broken {
				s := p.Sheet.Steps[i]
				if !reported[s] {
					reported[s] = true
					p.Report(s.Span, "this order is never given ("+b.Never.ID+"): "+b.By.String(), b.Never.Instead)
				}
			}
		}
		for _, t := range p.Facts.Passages {
			if !ordersWork(t) || t.Step != nil && t.First && reported[t.Step] {
				continue
			}
			for _, s := range t.Sentences {
				if english.TellsFault(t.In(s)) {
					break
				}
				if t.Kind == check.Cell && strings.HasSuffix(t.In(s)[0].Lower, "ing") {
					continue // a row's name; another cell says whether it may be done
				}
				if n, hit := p.Shared.NeverSays.Find(t.Text, s); n != nil {
					p.Report(t.Span(hit.First, hit.Last), "this order is never given ("+n.ID+")", n.Instead)
				}
			}
		}
	},
}

// ordersWork reports a passage that a reader may act on.
func ordersWork(t *check.Passage) bool {
	switch t.Kind {
	case check.QuestionText, check.Explanation:
		return false
	case check.AnswerText:
		return t.Right
	}
	return !t.Under("Sources")
}
