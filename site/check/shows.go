package check

import (
	"strings"
	"sync"

	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// shows is what a sheet shows of hazards: all that other sheets ask of it, and
// little enough to be kept while a whole book is checked.
type shows struct {
	sheet   *sheet.Sheet
	reader  *reader
	present []Present
	// includes are the procedures that steps do as their whole action.
	includes map[*sheet.Step]inclusion
}

// looked is a sheet that was or will be looked at, once.
type looked struct {
	once  sync.Once
	shows *shows
	// facts are kept for the sheet's own rules where another sheet asked first.
	facts *facts
}

// mostKept is how many sheets' facts are kept at a time; further ones are read
// twice rather than fill the memory.
const mostKept = 256

// showsOf gives what a sheet shows, worked out by whoever asks first.
func (r *reader) showsOf(s *sheet.Sheet) *shows {
	at := r.lookAt(s)
	at.once.Do(func() {
		f := gather(s, r)
		f.look()
		at.shows = f.shows
		r.mu.Lock()
		if r.kept < mostKept {
			at.facts = f
			r.kept++
		}
		r.mu.Unlock()
	})
	return at.shows
}

// factsOf reads a sheet for its own rules.
func (r *reader) factsOf(s *sheet.Sheet) *facts {
	at := r.lookAt(s)
	r.mu.Lock()
	f := at.facts
	if f != nil {
		at.facts = nil
		r.kept--
	}
	r.mu.Unlock()
	if f == nil {
		f = gather(s, r)
	}
	at.once.Do(func() {
		f.look()
		at.shows = f.shows
	})
	f.shows = at.shows
	return f
}

func (r *reader) lookAt(s *sheet.Sheet) *looked {
	r.mu.Lock()
	defer r.mu.Unlock()
	at, ok := r.looked[s]
	if !ok {
		at = &looked{}
		r.looked[s] = at
	}
	return at
}

// Hazards lists the hazards that a sheet of the book shows, each at the first
// place of every step, in the order of the file; what the sheet waives is
// among them. It reads the register anew: for many sheets, run a Memory and
// ask that.
func Hazards(book *sheet.Book, s *sheet.Sheet) []Present { return newReader(book).showsOf(s).present }

// shownHazards lists the hazards that the sheet shows, each once.
func (s *shows) shownHazards() []*sheet.Hazard {
	var list []*sheet.Hazard
	seen := make(map[*sheet.Hazard]bool)
	for _, p := range s.present {
		if !seen[p.Hazard] {
			seen[p.Hazard] = true
			list = append(list, p.Hazard)
		}
	}
	return list
}

// placesOf lists where the sheet shows a hazard.
func (s *shows) placesOf(h *sheet.Hazard) []Present {
	var list []Present
	for _, p := range s.present {
		if p.Hazard == h {
			list = append(list, p)
		}
	}
	return list
}

// allIncluded reports whether every place that shows a hazard is a step that
// does another procedure, and that procedure has a message on it.
func (s *shows) allIncluded(h *sheet.Hazard) bool {
	for _, p := range s.placesOf(h) {
		if p.Step == nil || !s.includedGuards(&p) {
			return false
		}
	}
	return true
}

// includedGuards reports whether the procedure that a place's step does as its
// whole action has a message on the hazard.
func (s *shows) includedGuards(p *Present) bool {
	if p.Step == nil || !p.own {
		return false
	}
	target, _ := s.included(p.Step)
	return target != nil && len(s.reader.showsOf(target).messagesOn(p.Hazard)) > 0
}

// messagesOn lists the messages of the sheet that name a hazard.
func (s *shows) messagesOn(h *sheet.Hazard) []*sheet.Message {
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

// guards reports whether a message stands in time for a hazard.
func guards(m *sheet.Message, p *Present) bool {
	switch {
	case p.Whole:
		return true
	case m.Step != nil && p.Step != nil:
		return m.Step.Number <= p.Step.Number
	}
	return m.Span.Start < p.At.Start
}

// waives reports whether the sheet waives a hazard.
func waives(s *sheet.Sheet, h *sheet.Hazard) *sheet.Waiver {
	for i := range s.Front.Waivers {
		if s.Front.Waivers[i].Hazard == h.ID {
			return &s.Front.Waivers[i]
		}
	}
	return nil
}

// An inclusion is a procedure that a step does as its whole action.
type inclusion struct {
	target *sheet.Sheet
	link   *sheet.Link
}

// included is the procedure that a step does as its whole action, nil where
// there is none.
func (s *shows) included(step *sheet.Step) (*sheet.Sheet, *sheet.Link) {
	i := s.includes[step]
	return i.target, i.link
}

// include notes the procedure that the step of a passage does as its whole
// action: its own sentence is short and links to the sheet as a whole.
func (f *facts) include(p *passage) {
	if p.step == nil || !p.first || p.message != nil || len(p.Sentences) != 1 {
		return
	}
	for _, l := range f.sheet.Links {
		if l.Node == nil || !isIn(l.Node, p.node) {
			continue
		}
		target := f.reader.book.Linked(f.sheet, l)
		place := f.sheet.Resolve(l.Dest).Fragment
		if target == nil || target == f.sheet || target.Front.Kind != sheet.Procedure || place != "" && place != "steps" {
			continue
		}
		linked := f.words.Read(f.sheet.Prose(l.Node, nil).Text)
		const around = 8 // words of the step's own beside the link
		if len(p.Words)-len(linked.Words) <= around && f.includes[p.step].target == nil {
			f.includes[p.step] = inclusion{target, l}
		}
	}
}

// isIn reports whether a node stands in another.
func isIn(n, in ast.Node) bool {
	for ; n != nil; n = n.Parent() {
		if n == in {
			return true
		}
	}
	return false
}
