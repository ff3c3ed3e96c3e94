package check

import (
	"cmp"
	"fmt"
	"slices"

	"baybook/site/check/work"
	"baybook/site/sheet"
)

// Messages are the safety messages of a sheet as its reader meets them: those
// that the build writes from the register, and what it adds to the author's
// own.
type Messages struct {
	// Built are those that no message of the author's stands for, each once, at
	// the first step that shows the hazard.
	Built []*Built
	// Reminders are later steps that show a hazard again.
	Reminders []Reminder
	// Adds are the hazards whose avoidance the register adds to a message of the
	// author's, by message: once for each hazard.
	Adds map[*sheet.Message][]*sheet.Hazard
	// At are the things that the steps work on, once for each step.
	At []string
}

// A Built is what the build writes about one hazard.
type Built struct {
	Hazard *sheet.Hazard
	Word   sheet.Word
	// Step is the step that it stands in, nil for the sheet's opening.
	Step *sheet.Step
	// By is the work that brings it, and Condition the place of the condition in
	// the hazard's When; Condition is -1 where the front matter names the hazard.
	By        work.Declaration
	Condition int
}

// A Reminder is a step that shows a hazard of which the reader was told before.
type Reminder struct {
	Step   *sheet.Step
	Hazard *sheet.Hazard
	Word   sheet.Word
	// Own, Built or Sheet is where it was told: in a message of the author's, in
	// one of the build's, or in the procedure that the step does.
	Own   *sheet.Message
	Built *Built
	Sheet *sheet.Sheet
}

// Line reports whether a message is a line: of property, or of what everybody
// in the bay minds all day.
func (b *Built) Line() bool { return IsLine(b.Hazard, b.Word) }

// IsLine reports a hazard whose message is a line rather than a block.
func IsLine(h *sheet.Hazard, w sheet.Word) bool { return w <= sheet.Notice || h.Standing }

// Blocks counts the blocks that a sheet's page shows: the author's messages,
// and the build's, several of one step and word as one.
func (m *Messages) Blocks(s *sheet.Sheet) int {
	type block struct {
		step *sheet.Step
		word sheet.Word
	}
	built := make(map[block]bool)
	for _, b := range m.Built {
		if !b.Line() {
			built[block{b.Step, b.Word}] = true
		}
	}
	return len(s.Messages) + len(built)
}

// Reason says why the build wrote it: the work, and the row's condition.
func (b *Built) Reason() string {
	if b.Condition < 0 {
		return "the front matter's hazards names " + b.Hazard.ID
	}
	return fmt.Sprintf("%s, by condition %d of %s", b.By.String(), b.Condition+1, b.Hazard.ID)
}

// MessagesOf gives the messages of a sheet of the book. It reads the book's
// lists anew: for many sheets, run a Cache and ask that.
func MessagesOf(book *sheet.Book, s *sheet.Sheet) *Messages {
	return newBookFacts(nil, book).HazardsOf(s).Messages()
}

// Messages works out what the sheet's reader is told.
func (s *HazardFacts) Messages() *Messages {
	m := &Messages{Adds: make(map[*sheet.Message][]*sheet.Hazard)}
	s.add(m)
	for i := range s.Work.Steps {
		var here []string
		for _, d := range s.Work.Steps[i].Does {
			for _, id := range d.At {
				if !slices.Contains(here, id) {
					here = append(here, id)
				}
			}
		}
		m.At = append(m.At, here...)
	}
	told := make(map[*sheet.Hazard]*Built)
	for _, id := range s.sheet.Front.Hazards {
		h := s.book.Book.Register.Named(id)
		if h == nil || h.Avoid == "" || told[h] != nil || len(s.MessagesOn(h)) > 0 || WaiverAt(s.sheet, h, nil) != nil || s.brings(h) {
			continue // the step that brings it shows it
		}
		told[h] = &Built{Hazard: h, Word: h.Least, Condition: -1}
		m.Built = append(m.Built, told[h])
	}
	for i, step := range s.sheet.Steps {
		if i >= len(s.Causes) {
			break
		}
		for _, c := range s.Causes[i] {
			if c.Hazard.Avoid != "" && WaiverAt(s.sheet, c.Hazard, step) == nil {
				s.tell(m, told, step, c)
			}
		}
	}
	slices.SortStableFunc(m.Built, func(a, b *Built) int {
		return cmp.Or(cmp.Compare(numberOf(a.Step), numberOf(b.Step)), cmp.Compare(b.Word, a.Word))
	})
	return m
}

func numberOf(s *sheet.Step) int {
	if s == nil {
		return 0
	}
	return s.Number
}

// Same reports whether a sheet's reader is told the same; both are of the same
// sheet and register.
func (m *Messages) Same(o *Messages) bool {
	if m == o || m == nil || o == nil {
		return m == o
	}
	sameBuilt := func(a, b *Built) bool {
		return a == b || a != nil && b != nil && a.Hazard == b.Hazard && a.Word == b.Word && a.Step == b.Step && a.Reason() == b.Reason()
	}
	return slices.EqualFunc(m.Built, o.Built, sameBuilt) && slices.EqualFunc(m.Reminders, o.Reminders, func(a, b Reminder) bool {
		return a.Step == b.Step && a.Hazard == b.Hazard && a.Word == b.Word && a.Own == b.Own && sameBuilt(a.Built, b.Built) &&
			(a.Sheet == b.Sheet || a.Sheet != nil && b.Sheet != nil && a.Sheet.Path == b.Sheet.Path && a.Sheet.Front.Number == b.Sheet.Front.Number)
	})
}

// add finds what the register adds to the author's own messages.
func (s *HazardFacts) add(m *Messages) {
	seen := make(map[*sheet.Hazard]bool)
	for _, own := range s.sheet.Messages {
		for _, h := range s.HazardsNamed(own) {
			if h != nil && h.Avoid != "" && !seen[h] {
				seen[h] = true
				m.Adds[own] = append(m.Adds[own], h)
			}
		}
	}
}

// tell says what the reader of a step is told of a hazard: in full the first
// time, else where it was told.
func (s *HazardFacts) tell(m *Messages, told map[*sheet.Hazard]*Built, step *sheet.Step, c Cause) {
	h := c.Hazard
	word := s.wordAt(h, step)
	here := ShownHazard{Hazard: h, Step: step}
	remind := Reminder{Step: step, Hazard: h, Word: word}
	for _, own := range s.MessagesOn(h) {
		if own.Step == step {
			return
		}
		if remind.Own == nil && own.Span.Start < step.Span.Start && Guards(own, &here) {
			remind.Own = own
		}
	}
	target, _ := s.Included(step)
	switch {
	case remind.Own != nil:
	case told[h] != nil:
		remind.Built = told[h]
		told[h].Word = max(told[h].Word, word)
	case target != nil && s.book.HazardsOf(target).SpeaksOf(h):
		remind.Sheet = target
	default:
		told[h] = &Built{Hazard: h, Word: word, Step: step, By: c.By, Condition: c.Condition}
		m.Built = append(m.Built, told[h])
		return
	}
	m.Reminders = append(m.Reminders, remind)
}

// wordAt is the least word of a hazard at a step: that of the register, or a
// more serious one that the step's words call for.
func (s *HazardFacts) wordAt(h *sheet.Hazard, step *sheet.Step) sheet.Word {
	word := h.Least
	for _, p := range s.Present {
		if p.Hazard == h && p.Step == step {
			word = max(word, p.Least)
		}
	}
	return word
}

// SpeaksOf reports whether the reader of the sheet is told of a hazard: by the
// author or by the build.
func (s *HazardFacts) SpeaksOf(h *sheet.Hazard) bool {
	return len(s.MessagesOn(h)) > 0 || s.brings(h) || h.Avoid != "" && slices.Contains(s.sheet.Front.Hazards, h.ID)
}

// brings reports whether the declared work of a step brings a hazard of which
// the register has a message.
func (s *HazardFacts) brings(h *sheet.Hazard) bool {
	return h.Avoid != "" && slices.ContainsFunc(s.Causes, func(list []Cause) bool {
		return slices.ContainsFunc(list, func(c Cause) bool { return c.Hazard == h })
	})
}
