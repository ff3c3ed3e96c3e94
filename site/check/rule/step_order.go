package rule

import (
	"fmt"
	"strings"

	"baybook/site/check"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

var stepOrder = &check.Rule{
	Name: "step-order",
	Firm: true,
	Doc: `What must come before a step comes before it

Steps change the vehicle: a fuse comes out, a gate is propped, a clamp comes
off. Some work needs such a change first, and some steps must not stand the
other way round. content/work.yaml lists these needs, each with its reason. The
build runs the steps from a known beginning and reports the need that nothing
before the step has met, through the procedures that steps do, and through the
sheets of a job one after the other. What is so from the start stands in the head of the
sheet: work: {state: [negative-off]}; what words cannot show, in a link:
[Read](do:measure?state=proved-dead). No waiver sets this aside.`,
	Check: func(p *check.Pass) {
		moments, left := p.Facts.Through()
		for i, m := range moments {
			for _, s := range m.Missing {
				target, link := p.Facts.Included(p.Sheet.Steps[i])
				notSo(p, link.Span, target, s)
			}
			for _, miss := range m.Misses {
				missed(p, i, &miss)
			}
		}
		if len(p.Sheet.Work) > 0 {
			jobOrder(p)
		}
		if len(p.Sheet.Steps) == 0 {
			return
		}
		front := &p.Sheet.Front
		for _, end := range p.Book.Work.Left(left, front.Work.State, front.Work.Leaves) {
			last := p.Sheet.Steps[len(p.Sheet.Steps)-1]
			p.Report(last.Span, "the sheet ends with "+end.State+": "+end.Why, end.Do+", or say in the head that it is left on purpose: work: {leaves: ["+end.State+"]}")
		}
	},
}

// jobOrder reports sheets of a job that begin with what is not so, and what the
// job leaves behind.
func jobOrder(p *check.Pass) {
	states, left := p.Facts.JobStates()
	for _, one := range states {
		for _, s := range one.Missing {
			notSo(p, one.Link.Span, one.Target, s)
		}
	}
	front := &p.Sheet.Front
	for _, end := range p.Book.Work.Left(left, front.Work.State, front.Work.Leaves) {
		last := p.Sheet.Work[len(p.Sheet.Work)-1]
		p.Report(last.Span, "the job ends with "+end.State+": "+end.Why, end.Do+", in a sheet after this one, or say in the head that it is left on purpose: work: {leaves: ["+end.State+"]}")
	}
}

// notSo reports a sheet that takes something to be so which nothing has made
// so.
func notSo(p *check.Pass, at sheet.Span, target *sheet.Sheet, state string) {
	p.Report(at, target.Front.Number+" begins with "+state+", and nothing before it gives that",
		"do what gives it first, or say in the head that it is so from the start: work: {state: ["+state+"]}", check.WithNote(target.Source, target.Front.Place("work").Start, "it takes it to be so here"))
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
