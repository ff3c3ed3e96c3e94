package rule

import (
	"fmt"
	"strings"

	"baybook/site/check"
	"baybook/site/check/work"
)

var stepOrder = &check.Rule{
	Name: "step-order",
	Firm: true,
	Doc: `What must come before a step comes before it

Steps change the vehicle: a fuse comes out, a gate is propped, a clamp comes
off. Some work needs such a change first, and some steps must not stand the
other way round. content/work.yaml lists these needs, each with its reason. The
build runs the steps from a known beginning and reports the need that nothing
before the step has met. What is so from the start stands in the head of the
sheet: work: {state: [negative-off]}; what words cannot show, in a link:
[Read](do:measure?state=proved-dead). No waiver sets this aside.`,
	Check: func(p *check.Pass) {
		w := &p.Facts.Work
		for i, m := range w.Moments {
			for _, miss := range m.Misses {
				missed(p, i, &miss)
			}
		}
		front := &p.Sheet.Front
		for _, end := range p.Book.Work.Left(w.End, front.Work.State, front.Work.Leaves) {
			last := p.Sheet.Steps[len(p.Sheet.Steps)-1]
			p.Report(last.Span, "the sheet ends with "+end.State+": "+end.Why, end.Do+", or say in the head that it is left on purpose: work: {leaves: ["+end.State+"]}")
		}
	},
}

// missed reports a need that nothing has met.
func missed(p *check.Pass, step int, miss *work.Miss) {
	s := p.Sheet.Steps[step]
	at := s.Span
	if own := p.Facts.Work.Own[step]; own != nil && len(own.Sentences) > 0 {
		at = own.SentenceSpan(own.Sentences[0])
	}
	what := miss.By.String()
	if miss.Later >= 0 {
		later := p.Sheet.Steps[miss.Later]
		p.Report(at, fmt.Sprintf("step %d (%s) comes before step %d, which should come first: %s", s.Number, what, later.Number, miss.Need.Why),
			miss.Need.Do, check.WithNote(p.Sheet.Source, later.Span.Start, "this should come first"))
		return
	}
	p.Report(at, fmt.Sprintf("step %d (%s) needs %s before it, and no step gives it: %s", s.Number, what, strings.Join(miss.Need.Need, " or "), miss.Need.Why), miss.Need.Do)
}
