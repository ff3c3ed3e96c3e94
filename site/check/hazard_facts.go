package check

import (
	"slices"
	"strings"
	"sync"

	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// HazardFacts are the hazards that a sheet shows: all that other sheets ask of
// it, and little enough to be kept while a whole book is checked.
type HazardFacts struct {
	sheet *sheet.Sheet
	book  *BookFacts
	// Present are the hazards with their places, in the order of the file.
	Present []ShownHazard
	// Work is what the steps do.
	Work StepWork
	// Causes are the hazards that the work of each step brings.
	Causes [][]Cause
	// includes are the procedures that steps do as their whole action.
	includes map[*sheet.Step]inclusion
}

// hazardsOnce works out the hazards of a sheet, once.
type hazardsOnce struct {
	once    sync.Once
	hazards *HazardFacts
	// facts are kept for the sheet's own rules where another sheet asked first.
	facts *SheetFacts
}

// mostKept is how many sheets' facts are kept at a time; further ones are read
// twice rather than fill the memory.
const mostKept = 256

// HazardsOf gives what a sheet shows, worked out by whoever asks first.
func (b *BookFacts) HazardsOf(s *sheet.Sheet) *HazardFacts {
	at := b.lookAt(s)
	at.once.Do(func() {
		f := gather(s, b)
		f.look()
		at.hazards = f.HazardFacts
		b.mu.Lock()
		if b.kept < mostKept {
			at.facts = f
			b.kept++
		}
		b.mu.Unlock()
	})
	return at.hazards
}

// factsOf reads a sheet for its own rules.
func (b *BookFacts) factsOf(s *sheet.Sheet) *SheetFacts {
	at := b.lookAt(s)
	b.mu.Lock()
	f := at.facts
	if f != nil {
		at.facts = nil
		b.kept--
	}
	b.mu.Unlock()
	if f == nil {
		f = gather(s, b)
	}
	at.once.Do(func() {
		f.look()
		at.hazards = f.HazardFacts
	})
	f.HazardFacts = at.hazards
	return f
}

func (b *BookFacts) lookAt(s *sheet.Sheet) *hazardsOnce {
	b.mu.Lock()
	defer b.mu.Unlock()
	at, ok := b.looks[s]
	if !ok {
		at = &hazardsOnce{}
		b.looks[s] = at
	}
	return at
}

// Hazards lists the hazards that a sheet of the book shows, each at the first
// place of every step, in the order of the file; what the sheet waives is
// among them. It reads the register anew: for many sheets, run a Cache and
// ask that.
func Hazards(book *sheet.Book, s *sheet.Sheet) []ShownHazard {
	return newBookFacts(nil, book).HazardsOf(s).Present
}

// ShownHazards lists the hazards that the sheet shows, each once.
func (s *HazardFacts) ShownHazards() []*sheet.Hazard {
	var list []*sheet.Hazard
	seen := make(map[*sheet.Hazard]bool)
	for _, p := range s.Present {
		if !seen[p.Hazard] {
			seen[p.Hazard] = true
			list = append(list, p.Hazard)
		}
	}
	return list
}

// PlacesOf lists where the sheet shows a hazard.
func (s *HazardFacts) PlacesOf(h *sheet.Hazard) []ShownHazard {
	var list []ShownHazard
	for _, p := range s.Present {
		if p.Hazard == h {
			list = append(list, p)
		}
	}
	return list
}

// AllIncluded reports whether every place that shows a hazard is a step that
// does another procedure, and that procedure has a message on it.
func (s *HazardFacts) AllIncluded(h *sheet.Hazard) bool {
	for _, p := range s.PlacesOf(h) {
		if p.Step == nil || !s.IncludedGuards(&p) {
			return false
		}
	}
	return true
}

// IncludedGuards reports whether the procedure that a place's step does as its
// whole action has a message on the hazard.
func (s *HazardFacts) IncludedGuards(p *ShownHazard) bool {
	if p.Step == nil || !p.own {
		return false
	}
	target, _ := s.Included(p.Step)
	return target != nil && s.book.HazardsOf(target).SpeaksOf(p.Hazard)
}

// MessagesOn lists the messages of the sheet that name a hazard.
func (s *HazardFacts) MessagesOn(h *sheet.Hazard) []*sheet.Message {
	var list []*sheet.Message
	for _, m := range s.sheet.Messages {
		for _, t := range m.Titles {
			if strings.EqualFold(t.Text, h.Title) {
				list = append(list, m)
				break
			}
		}
	}
	return list
}

// Guards reports whether a message stands in time for a hazard.
func Guards(m *sheet.Message, p *ShownHazard) bool {
	switch {
	case p.Whole:
		return true
	case m.Step != nil && p.Step != nil:
		return m.Step.Number <= p.Step.Number
	}
	return m.Span.Start < p.At.Start
}

// WaiverAt is the sheet's waiver of a hazard at a step, or, where step is nil,
// outside the steps; nil where it has none.
func WaiverAt(s *sheet.Sheet, h *sheet.Hazard, step *sheet.Step) *sheet.Waiver {
	number := 0
	if step != nil {
		number = step.Number
	}
	for i := range s.Front.Waivers {
		if w := &s.Front.Waivers[i]; w.Hazard == h.ID && w.Step == number {
			return w
		}
	}
	return nil
}

// OpenPlaces are the places that show a hazard and where no waiver sets it
// aside.
func (s *HazardFacts) OpenPlaces(h *sheet.Hazard) []ShownHazard {
	return slices.DeleteFunc(s.PlacesOf(h), func(p ShownHazard) bool { return WaiverAt(s.sheet, h, p.Step) != nil })
}

// An inclusion is a procedure that a step does as its whole action.
type inclusion struct {
	target *sheet.Sheet
	link   *sheet.Link
}

// Included is the procedure that a step does as its whole action, nil where
// there is none.
func (s *HazardFacts) Included(step *sheet.Step) (*sheet.Sheet, *sheet.Link) {
	i := s.includes[step]
	return i.target, i.link
}

// include notes the procedure that the step of a passage does as its whole
// action: its own sentence is short and links to the sheet as a whole.
func (f *SheetFacts) include(p *Passage) {
	if p.Step == nil || !p.First || p.Message != nil || len(p.Sentences) != 1 {
		return
	}
	for _, l := range f.Sheet.Links {
		if l.Node == nil || !IsIn(l.Node, p.Node) {
			continue
		}
		target := f.Book.Book.Linked(f.Sheet, l)
		place := f.Sheet.Resolve(l.Dest).Fragment
		if target == nil || target == f.Sheet || target.Front.Kind != sheet.Procedure || place != "" && place != sheet.Slug(sheet.StepsTitle) {
			continue
		}
		linked := f.Words.Read(f.Sheet.Prose(l.Node, nil).Text)
		const around = 8 // words of the step's own beside the link
		if len(p.Words)-len(linked.Words) <= around && f.includes[p.Step].target == nil {
			f.includes[p.Step] = inclusion{target, l}
		}
	}
}

// IsIn reports whether a node stands in another.
func IsIn(n, in ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if n == in {
			return true
		}
	}
	return false
}

// HazardsNamed lists the hazards that a message names, in the order of its
// titles; nil for a title that the register does not know.
func (s *HazardFacts) HazardsNamed(m *sheet.Message) []*sheet.Hazard {
	list := make([]*sheet.Hazard, len(m.Titles))
	for i, t := range m.Titles {
		list[i] = s.book.Book.Register.Titled(t.Text)
	}
	return list
}
