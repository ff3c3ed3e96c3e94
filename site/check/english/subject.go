package english

import (
	"slices"
	"strings"

	"baybook/calculators/calc"
)

// A Subject is what a number in running text is a number of: "the 10 A fuse",
// "a fuse of 10 A", "torque the bolt to 9 N·m".
type Subject struct {
	// Head is the stem of the thing; empty for a torque that names no bolt.
	Head string
	// Marks are the stems that tell one such thing from another: lamp in "the
	// fuse for the lamp is 3 A".
	Marks []string
	// Relation is how the number belongs to the thing, where that is not plain: deep
	// in "a hole 20 mm deep", cut in "cut the wire to 20 mm".
	Relation string
	// Bound is most in "at most 100 mV", least in "at least 2 mm".
	Bound string
}

// Fits reports whether two subjects may be the same: what marks the one marks
// the other too, or the other says less.
func (s *Subject) Fits(o *Subject) bool {
	if s.Relation != o.Relation || s.Bound != o.Bound || s.Head != o.Head && s.Head != "" && o.Head != "" {
		return false
	}
	if len(s.Marks) > len(o.Marks) {
		s, o = o, s
	}
	for _, m := range s.Marks {
		if !slices.Contains(o.Marks, m) && m != o.Head {
			return false
		}
	}
	return true
}

// A SubjectReader reads the subject of a number in one sentence.
type SubjectReader struct {
	Sentence []Word
	Source   string
	Lexicon  *Lexicon
}

// Of reads the subject of a quantity of the sentence; false where the text
// leaves it open.
func (r *SubjectReader) Of(q *Quantity) (Subject, bool) {
	at := slices.IndexFunc(r.Sentence, func(w Word) bool { return w.End > q.Start })
	next := slices.IndexFunc(r.Sentence, func(w Word) bool { return w.Start >= q.End })
	if next < 0 {
		next = len(r.Sentence)
	}
	if at < 0 || r.ranges(at, next) || r.loose(at) || r.general(at) {
		return Subject{}, false
	}
	var s Subject
	at, s.Bound = r.boundBefore(at)
	ok := r.behind(&s, next) || r.before(&s, q, at, next)
	if q.Unit.Dim == calc.Torque {
		return ofTorque(s)
	}
	if !ok || s.Head == "" || isVague(s.Head) {
		return s, false
	}
	r.conditions(&s)
	return s, true
}

// ofTorque makes the bolt the head of a torque: that it is one, the unit says.
func ofTorque(s Subject) (Subject, bool) {
	names := append([]string{s.Head}, s.Marks...)
	names = slices.DeleteFunc(names, func(n string) bool { return n == "" || n == "torqu" || n == "tighten" })
	s.Head, s.Marks, s.Relation = "", nil, ""
	if len(names) > 0 {
		s.Head, s.Marks = names[0], names[1:]
	}
	return s, true
}

// ranges reports whether a number is an end of a range: "3 to 5 mm", "0 V to
// 16 V".
func (r *SubjectReader) ranges(at, next int) bool {
	link := func(lower string) bool { return lower == "to" || lower == "and" || lower == "through" }
	if next+1 < len(r.Sentence) && r.Sentence[next].Lower == "to" && r.Sentence[next+1].Number {
		return true
	}
	if next < len(r.Sentence) && r.Sentence[next].Number && r.Sentence[next].Break >= Hyphen && r.Sentence[next].Break != Comma {
		return true // 3-5 mm
	}
	if at > 0 && r.Sentence[at].Break == Hyphen && r.Sentence[at-1].Number {
		return true
	}
	for k := at - 2; k >= max(0, at-3); k-- {
		if link(r.Sentence[at-1].Lower) && r.Sentence[k].Number {
			between := k > 0 && (r.Sentence[k-1].Lower == "between" || r.Sentence[k-1].Lower == "from")
			return r.Sentence[at-1].Lower != "and" || between
		}
	}
	return false
}

// loose reports whether the text itself calls a number inexact, or rules it
// out.
func (r *SubjectReader) loose(at int) bool {
	for k := at - 1; k >= 0; k-- {
		switch r.Sentence[k].Lower {
		case "about", "roughly", "nearly", "near", "around", "every", "each", "some", "another", "further":
			if k >= at-2 {
				return true
			}
		case "not", "never", "no", "without", "instead", "rather", "than", "like", "until", "per":
			return true
		}
	}
	return false
}

// general reports whether a number is of a thing that stands for any of its
// kind: "a fuse of 30 A melts the wire". In an order, "fit a fuse of 10 A", it
// is one.
func (r *SubjectReader) general(at int) bool {
	for k := at - 1; k >= max(0, at-2-mostWords); k-- {
		w := r.Sentence[k].Lower
		if w == "a" || w == "an" {
			from, ok := Action(r.Sentence)
			return !ok || !r.Lexicon.Orders(r.Sentence[from:])
		}
		if Determines(w) || r.Sentence[k+1].Break >= Comma {
			return false
		}
	}
	return false
}

// boundBefore takes the words of a bound off before a number.
func (r *SubjectReader) boundBefore(at int) (int, string) {
	if at == 0 || r.Sentence[at].Break >= Clause {
		return at, ""
	}
	last := r.Sentence[at-1].Lower
	two := ""
	if at > 1 {
		two = r.Sentence[at-2].Lower
	}
	switch {
	case two == "at" && (last == "most" || last == "least"):
		return at - 2, last
	case two == "up" && last == "to":
		return at - 2, "most"
	case last == "under" || last == "below" || last == "within" || last == "maximum":
		return at - 1, "most"
	case last == "over" || last == "above" || last == "beyond" || last == "minimum":
		return at - 1, "least"
	case last == "exactly" || last == "only":
		return at - 1, ""
	}
	return at, ""
}

// mostWords are what a name in running text has at most.
const mostWords = 3

// behind reads a name that follows the number: "10 A fuse for the lamp".
func (r *SubjectReader) behind(s *Subject, next int) bool {
	end := r.nameEnd(next)
	if end == next {
		return false
	}
	r.take(s, next, end)
	r.placed(s, end)
	return true
}

// nameEnd is where the name ends that starts at a word.
func (r *SubjectReader) nameEnd(start int) int {
	end := start
	for end < len(r.Sentence) && end-start < mostWords && r.Sentence[end].Break <= Hyphen && r.names(end) {
		if end > start && r.verb(end) && (end+1 == len(r.Sentence) || Determines(r.Sentence[end+1].Lower) || Opens(r.Sentence[end+1].Lower)) {
			break // "the 10 A fuse feeds the lamp"
		}
		end++
	}
	return end
}

// names reports whether a word can be part of the name of a thing.
func (r *SubjectReader) names(i int) bool {
	w := &r.Sentence[i]
	if _, unit := calc.LookupUnit(w.Text); unit || w.Number || NotVerb(w.Lower) || Opens(w.Lower) || Determines(w.Lower) || Finite(w.Lower) || measures(w.Lower) {
		return false
	}
	switch w.Lower {
	case "s", "then", "about", "exactly", "only", "again", "apart", "away", "into", "onto", "off", "up", "down", "out", "across", "per", "above", "below",
		"that", "reads", "read", "against", "around", "past", "back", "more", "less", "least", "most", "too", "until", "while", "be", "been", "rated", "set":
		return false
	}
	return !IsAdverb(w.Lower) && len(w.Lower) > 1
}

// verb reports whether a word may be an action.
func (r *SubjectReader) verb(i int) bool {
	w := r.Sentence[i].Lower
	return r.Lexicon.Verbs[w] || r.Lexicon.Verbs[strings.TrimSuffix(w, "s")] || r.Lexicon.Verbs[strings.TrimSuffix(w, "es")]
}

// states reports a verb in the third person: "the bolt holds at 9 N·m".
func (r *SubjectReader) states(i int) bool {
	w := r.Sentence[i].Lower
	return strings.HasSuffix(w, "s") && !r.Lexicon.Verbs[w] && r.verb(i) && i > 0 && r.names(i-1)
}

// take makes words the head of the subject and what marks it.
func (r *SubjectReader) take(s *Subject, first, end int) {
	s.Head = r.Sentence[end-1].Stem
	for _, w := range r.Sentence[first : end-1] {
		s.Marks = append(s.Marks, w.Stem)
	}
}

// placed takes in what tells where the thing is: "for the lamp", "on the wire".
func (r *SubjectReader) placed(s *Subject, at int) {
	for at+1 < len(r.Sentence) && r.Sentence[at].Break <= Hyphen && Opens(r.Sentence[at].Lower) {
		at++
		for at < len(r.Sentence) && Determines(r.Sentence[at].Lower) {
			at++
		}
		end := r.nameEnd(at)
		for _, w := range r.Sentence[at:end] {
			s.Marks = append(s.Marks, w.Stem)
		}
		if end == at {
			return
		}
		at = end
	}
}

// before reads a name that leads to the number: "a fuse of 10 A", "the fuse is
// 10 A", "cut the wire to 20 mm", "fuse: 10 A".
func (r *SubjectReader) before(s *Subject, q *Quantity, at, next int) bool {
	if next < len(r.Sentence) && r.Sentence[next].Break == NoBreak && (measures(r.Sentence[next].Lower) || distance(r.Sentence[next].Lower)) {
		s.Relation = r.Sentence[next].Lower
		if !measures(s.Relation) {
			r.placed(s, next)
		}
	} else {
		r.placed(s, next)
	}
	end, joined, ok := r.leadIn(s, q, at)
	if !ok {
		return false
	}
	first := r.nameStart(end)
	if first == end {
		return false
	}
	if first == 0 && r.verb(0) && first+1 < end {
		first++ // "Fit fuse 10 A"
	}
	if first+1 == end && r.verb(first) && joined != "of" && joined != "is" && q.Unit.Dim != calc.Torque && r.Sentence[at].Break < Clause && (first == 0 || !Determines(r.Sentence[first-1].Lower)) {
		return false // "stand at 6 m"
	}
	r.take(s, first, end)
	r.owner(s, first)
	if verb := r.order(first); verb >= 0 && s.Relation == "" && (joined == "to" || joined == "at" || joined == "") {
		s.Relation += neutral(r.Sentence[verb].Stem)
	}
	return true
}

// leadIn takes off what leads from a name to the number, and says which word
// that was; false where the number stands apart.
func (r *SubjectReader) leadIn(s *Subject, q *Quantity, at int) (end int, joined string, ok bool) {
	end = at
	if end == 0 {
		return 0, "", false
	}
	if r.Sentence[at].Break < Comma && joins(r.Sentence[end-1].Lower) {
		end--
		joined = r.Sentence[end].Lower
		for end > 0 && (Finite(r.Sentence[end-1].Lower) || r.Sentence[end-1].Lower == "be" || joined != "of" && r.states(end-1)) {
			end-- // "is at", "must be", "holds at", but not "stops at"
			if r.states(end) {
				s.Relation += neutral(r.Sentence[end].Stem)
			}
		}
		return end, joined, true
	}
	if r.Sentence[at].Break >= Comma {
		before := r.Source[:q.Start]
		return end, "", strings.HasSuffix(strings.TrimRight(before, " ("), ":") || strings.HasSuffix(before, "(")
	}
	if r.states(end - 1) {
		end-- // "the fuse carries 6 A"
		s.Relation += r.Sentence[end].Stem
	}
	return end, "", true
}

// nameStart is where the name starts that ends before a word.
func (r *SubjectReader) nameStart(end int) int {
	first := end
	for first > 0 && end-first < mostWords && r.names(first-1) && (first == end || r.Sentence[first].Break <= Hyphen) {
		first--
	}
	return first
}

// owner takes in whose the thing is: "the fuse of the lamp is", "the lamp's fuse".
func (r *SubjectReader) owner(s *Subject, first int) {
	i := first - 1
	for i >= 0 && Determines(r.Sentence[i].Lower) {
		i--
	}
	if i < 1 || r.Sentence[i+1].Break >= Comma {
		return
	}
	switch r.Sentence[i].Lower {
	case "s":
		for _, w := range r.Sentence[r.nameStart(i):i] {
			s.Marks = append(s.Marks, w.Stem)
		}
	case "of", "for", "on", "over", "at", "in", "across", "behind":
		start := r.nameStart(i)
		if start == i || isVague(r.Sentence[i-1].Stem) { // "the value on the fuse" is the fuse's
			return
		}
		s.Marks = append(s.Marks, s.Head)
		for _, w := range r.Sentence[start : i-1] {
			s.Marks = append(s.Marks, w.Stem)
		}
		s.Head = r.Sentence[i-1].Stem
	}
}

// order is the place of the verb that has the thing at first for its object,
// -1 where there is none.
func (r *SubjectReader) order(first int) int {
	i := first - 1
	for i >= 0 && Determines(r.Sentence[i].Lower) {
		i--
	}
	if i >= 0 && r.Sentence[i+1].Break < Comma && r.verb(i) {
		return i
	}
	return -1
}

// conditions takes in what the number holds for: "where the run is long, ...".
func (r *SubjectReader) conditions(s *Subject) {
	in := false
	for i := range r.Sentence {
		w := &r.Sentence[i]
		switch w.Lower {
		case "if", "where", "when", "for", "with":
			in = true
			continue
		}
		if w.Break >= Comma {
			in = false
		}
		if in && r.names(i) && w.Stem != s.Head && !slices.Contains(s.Marks, w.Stem) {
			s.Marks = append(s.Marks, w.Stem)
		}
	}
}
