package check

import (
	"slices"

	"baybook/site/check/work"
	"baybook/site/sheet"
)

// Through follows the vehicle through the sheet's steps, and through those of
// the procedures that its steps do: a moment for each step, and the state at
// the end.
func (s *HazardFacts) Through() ([]work.Moment, []string) {
	lists := s.book.Book.Work.Lists
	if lists.Empty() {
		return nil, nil
	}
	return lists.Run(s.withInner(nil), s.sheet.Front.Work.State)
}

// withInner are the sheet's steps with those of the procedures that they do.
// doing are the sheets on the way here: one that does itself ends there.
func (s *HazardFacts) withInner(doing []*sheet.Sheet) []work.Step {
	steps := slices.Clone(s.Work.Steps)
	doing = append(slices.Clip(doing), s.sheet)
	for i := range steps {
		target, _ := s.Included(s.sheet.Steps[i])
		if target == nil || slices.Contains(doing, target) {
			continue
		}
		steps[i].Inner = s.book.HazardsOf(target).withInner(doing)
		steps[i].Assumes = target.Front.Work.State
	}
	return steps
}

// A JobState is a sheet of a job and what it takes to be so that nothing before
// it in the job has made so.
type JobState struct {
	Link    *sheet.Link
	Target  *sheet.Sheet
	Missing []string
}

// JobStates runs the sheets of a job one after the other, and gives those that
// begin with what is not so, and the state at the end.
func (s *HazardFacts) JobStates() (list []JobState, end []string) {
	lists := s.book.Book.Work.Lists
	if lists.Empty() {
		return nil, nil
	}
	state := slices.Clone(s.sheet.Front.Work.State)
	for _, link := range s.sheet.Work {
		target := s.book.Book.Linked(s.sheet, link)
		if target == nil || target == s.sheet {
			continue
		}
		one := JobState{Link: link, Target: target}
		for _, assumed := range target.Front.Work.State {
			if !slices.Contains(state, assumed) {
				one.Missing = append(one.Missing, assumed)
				state = append(state, assumed)
			}
		}
		if len(one.Missing) > 0 {
			list = append(list, one)
		}
		_, state = lists.Run(s.book.HazardsOf(target).withInner(nil), state)
	}
	return list, state
}
