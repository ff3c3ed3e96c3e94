package english

import "slices"

// A Hit is where a phrase was found: the words First up to Last of the text,
// those of the phrase's first part.
type Hit struct {
	// Pattern is the phrase's place in the list that the set was made of.
	Pattern     int
	First, Last int
}

// A Set is a list of phrases, ready to be looked for together.
type Set struct {
	patterns []Pattern
	// byHead lists the parts that may start with a stem, by its number. Small
	// sets, of which a register has hundreds, have a list of heads instead.
	byHead [][]partRef
	heads  []head
	// anyHead are the parts that start with a number.
	anyHead []partRef
}

type partRef struct{ pattern, part int }

// A head is a stem that parts may start with.
type head struct {
	stem  int32
	parts []partRef
}

// NewSet makes a set of phrases.
func NewSet(patterns []Pattern) *Set {
	s := &Set{patterns: patterns}
	highest := int32(0)
	at := make(map[int32]int) // of a stem in heads
	for i := range patterns {
		for j := range patterns[i].parts {
			ref := partRef{i, j}
			stems := patterns[i].parts[j].heads()
			if stems == nil {
				s.anyHead = append(s.anyHead, ref)
			}
			for _, stem := range stems {
				s.lead(at, stem, ref)
				highest = max(highest, stem)
			}
		}
	}
	const small = 16
	if len(s.heads) > small {
		s.byHead = make([][]partRef, highest+1)
		for _, h := range s.heads {
			s.byHead[h.stem] = h.parts
		}
		s.heads = nil
	}
	return s
}

// lead notes that a part may start with a stem. at holds the place of each
// stem in heads. Parts come in order, so one that is there is the last.
func (s *Set) lead(at map[int32]int, stem int32, ref partRef) {
	i, known := at[stem]
	if !known {
		at[stem] = len(s.heads)
		s.heads = append(s.heads, head{stem, []partRef{ref}})
		return
	}
	if h := &s.heads[i]; h.parts[len(h.parts)-1] != ref {
		h.parts = append(h.parts, ref)
	}
}

// starting are the parts that may start with a stem.
func (s *Set) starting(stem int32) []partRef {
	if s.byHead != nil {
		if int(stem) < len(s.byHead) {
			return s.byHead[stem]
		}
		return nil
	}
	for i := range s.heads {
		if s.heads[i].stem == stem {
			return s.heads[i].parts
		}
	}
	return nil
}

// A Mode says how a phrase counts.
type Mode uint8

const (
	// Shown leaves out what the sentence says is not done or not there.
	Shown Mode = iota
	// Said takes the words as they stand, "no test lamp" for "test lamp".
	Said
)

// Find lists the phrases of the set in the words of one stretch of the text,
// each once, where it stands first. Phrases of several parts need all of them
// there.
func (s *Set) Find(t *Text, in Sentence, mode Mode) []Hit { return s.find(t, in, mode, false) }

// Each lists every place where a phrase of the set stands, not its first
// alone; a phrase of several parts still counts once.
func (s *Set) Each(t *Text, in Sentence, mode Mode) []Hit { return s.find(t, in, mode, true) }

func (s *Set) find(t *Text, in Sentence, mode Mode, all bool) []Hit {
	var hits []Hit
	var partial map[partRef]Hit // first hit of a part of a phrase of several
	at := func(ref partRef, i int) {
		p := &s.patterns[ref.pattern]
		last := p.parts[ref.part].match(t, i, in.Last)
		if last < 0 || mode == Shown && !p.parts[ref.part].counts(t, in, i, last) {
			return
		}
		hit := Hit{ref.pattern, i, last}
		if len(p.parts) == 1 {
			hits = append(hits, hit)
			return
		}
		if partial == nil {
			partial = make(map[partRef]Hit)
		}
		if _, ok := partial[ref]; !ok {
			partial[ref] = hit
		}
	}
	s.each(t, in, at)
	for ref, hit := range partial {
		if ref.part == 0 && s.whole(partial, ref.pattern) {
			hits = append(hits, hit)
		}
	}
	slices.SortFunc(hits, func(a, b Hit) int {
		if a.Pattern != b.Pattern {
			return a.Pattern - b.Pattern
		}
		return a.First - b.First
	})
	return slices.CompactFunc(hits, func(a, b Hit) bool { return a.Pattern == b.Pattern && (!all || a.First == b.First) })
}

// each runs over the parts that may start at each word.
func (s *Set) each(t *Text, in Sentence, at func(ref partRef, i int)) {
	for i := in.First; i < in.Last; i++ {
		w := &t.Words[i]
		for _, ref := range s.starting(w.id) {
			at(ref, i)
		}
		if len(s.anyHead) > 0 && (w.Number || w.counts || w.Lower == "a" || w.Lower == "an") {
			for _, ref := range s.anyHead {
				at(ref, i)
			}
		}
	}
}

func (s *Set) whole(partial map[partRef]Hit, pattern int) bool {
	for j := range s.patterns[pattern].parts {
		if _, ok := partial[partRef{pattern, j}]; !ok {
			return false
		}
	}
	return true
}

// match reports where the part ends if it starts at word i, -1 where it does
// not.
func (p *part) match(t *Text, i, limit int) int {
	at := i
	for k := range p.words {
		if k > 0 {
			for at < limit && t.Words[at].Break < Comma && isArticle(t.Words[at].Lower) {
				at++
			}
		}
		if at >= limit || k > 0 && t.Words[at].Break >= Comma {
			return -1
		}
		n := p.words[k].match(t, at, limit)
		if n == 0 {
			return -1
		}
		at += n
	}
	return at
}

// match reports how many words the slot takes at word i, 0 where it does not
// fit.
func (s *slot) match(t *Text, i, limit int) int {
	w := &t.Words[i]
	switch {
	case s.exact != "":
		if w.Text == s.exact {
			return 1
		}
	case len(s.units) > 0:
		return s.measure(t, i, limit)
	default:
		if slices.Contains(s.stems, w.id) {
			return 1
		}
	}
	return 0
}

// measure reports how many words a number with its unit takes at word i: "10
// min", "ten minutes", "half an hour", "an hour"; 0 where none starts there.
func (s *slot) measure(t *Text, i, limit int) int {
	w := &t.Words[i]
	one := (w.Lower == "an" || w.Lower == "a") && i+1 < limit && t.Words[i+1].Lower != "second" && len(t.Words[i+1].Lower) > 3
	if !w.Number && !w.counts && !one {
		return 0
	}
	at := i + 1
	for !w.Number && at < limit && (t.Words[at].Lower == "a" || t.Words[at].Lower == "an" || t.Words[at].Lower == "of" || t.Words[at].counts) {
		at++
	}
	if at < limit && slices.Contains(s.units, t.Words[at].Text) {
		return at + 1 - i
	}
	return 0
}

// isArticle reports whether a word may stand within a phrase without being
// named by it.
func isArticle(lower string) bool {
	switch lower {
	case "the", "a", "an", "its", "your", "their", "his", "her", "this", "that", "each", "every", "any", "both", "s", "own":
		return true
	}
	return false
}

// numberWords are numbers that people write in letters.
var numberWords = map[string]bool{
	"half": true, "one": true, "two": true, "three": true, "four": true, "five": true, "six": true, "seven": true,
	"eight": true, "nine": true, "ten": true, "twelve": true, "fifteen": true, "twenty": true, "thirty": true,
	"forty": true, "quarter": true, "hundred": true, "fifty": true, "sixty": true, "ninety": true, "several": true, "few": true, "couple": true,
}
