package english

// Marks are the parts of a set's phrases that were met in a stretch of text.
// The marks of several stretches are joined to see whether a phrase is whole
// in all of them together. The zero value holds none.
type Marks struct{ parts []bool }

// Mark gives the parts of the set's phrases in the words of one stretch.
func (s *Set) Mark(t *Text, in Sentence, mode Mode) Marks {
	var m Marks
	s.each(t, in, func(ref partRef, i int) {
		p := &s.patterns[ref.pattern].parts[ref.part]
		if last := p.match(t, i, in.Last); last < 0 || mode == Shown && !p.counts(t, in, i, last) {
			return
		}
		if m.parts == nil {
			m.parts = make([]bool, s.partsIn(len(s.patterns)))
		}
		m.parts[s.partsIn(ref.pattern)+ref.part] = true
	})
	return m
}

// partsIn counts the parts of the first n phrases.
func (s *Set) partsIn(n int) int {
	count := 0
	for i := range s.patterns[:n] {
		count += len(s.patterns[i].parts)
	}
	return count
}

// Any reports whether there are any.
func (m Marks) Any() bool { return m.parts != nil }

// Join gives the marks of both.
func (m Marks) Join(o Marks) Marks {
	switch {
	case o.parts == nil:
		return m
	case m.parts == nil:
		return o
	}
	joined := make([]bool, len(m.parts))
	for i := range joined {
		joined[i] = m.parts[i] || o.parts[i]
	}
	return Marks{joined}
}

// Whole gives the first phrase of the set that is whole in the marks, -1
// where none is.
func (s *Set) Whole(m Marks) int {
	if m.parts == nil {
		return -1
	}
	at := 0
next:
	for i := range s.patterns {
		n := len(s.patterns[i].parts)
		part := m.parts[at : at+n]
		at += n
		for _, met := range part {
			if !met {
				continue next
			}
		}
		return i
	}
	return -1
}

// Has reports whether any phrase of one part is there in one stretch.
func (s *Set) Has(t *Text, in Sentence, mode Mode) bool { return len(s.Find(t, in, mode)) > 0 }
