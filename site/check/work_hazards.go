package check

import (
	"slices"

	"baybook/site/check/work"
	"baybook/site/sheet"
)

// A Cause is a hazard and the work that brings it.
type Cause struct {
	Hazard *sheet.Hazard
	By     work.Declaration
	// Condition is the place of the condition in the hazard's When.
	Condition int
}

// CausesOf lists the hazards that declared work brings, each once, in the
// order of the register. state holds what is so beside what the work declares.
func CausesOf(book *sheet.Book, does []work.Declaration, state []string) []Cause {
	var list []Cause
	for _, h := range book.Register.Hazards {
		for _, d := range does {
			now := d
			now.State = append(slices.Clip(d.State), state...)
			if i := book.Work.Meets(h.When, &now); i >= 0 {
				list = append(list, Cause{h, d, i})
				break
			}
		}
	}
	return list
}

// WorkOf gives what the steps of a sheet of the book do. It reads the book's
// lists anew: for many sheets, run a Cache.
func WorkOf(book *sheet.Book, s *sheet.Sheet) StepWork {
	return newBookFacts(nil, book).HazardsOf(s).Work
}
