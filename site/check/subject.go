package check

import (
	"slices"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check/phrase"
)

// A numbered is what a number in running text is a number of: "the 10 A fuse",
// "a fuse of 10 A", "torque the bolt to 9 N·m".
type numbered struct {
	// head is the stem of the thing; empty for a torque that names no bolt.
	head string
	// marks are the stems that tell one such thing from another: lamp in "the
	// fuse for the lamp is 3 A".
	marks []string
	// way is how the number belongs to the thing, where that is not plain: deep
	// in "a hole 20 mm deep", cut in "cut the wire to 20 mm".
	way string
	// bound is most in "at most 100 mV", least in "at least 2 mm".
	bound string
}

// fits reports whether two subjects may be the same: what marks the one marks
// the other too, or the other says less.
func (s *numbered) fits(o *numbered) bool {
	if s.way != o.way || s.bound != o.bound || s.head != o.head && s.head != "" && o.head != "" {
		return false
	}
	if len(s.marks) > len(o.marks) {
		s, o = o, s
	}
	for _, m := range s.marks {
		if !slices.Contains(o.marks, m) && m != o.head {
			return false
		}
	}
	return true
}

// A subjectReader reads the subject of a number in one sentence.
type subjectReader struct {
	words   []phrase.Word
	text    string
	lexicon *lexicon
}

// of reads the subject of a quantity of the sentence; false where the text
// leaves it open.
func (r *subjectReader) of(q *quantity) (numbered, bool) {
	at := slices.IndexFunc(r.words, func(w phrase.Word) bool { return w.End > q.number.Start })
	next := slices.IndexFunc(r.words, func(w phrase.Word) bool { return w.Start >= q.all.End })
	if next < 0 {
		next = len(r.words)
	}
	if at < 0 || r.ranges(at, next) || r.loose(at) || r.general(at) {
		return numbered{}, false
	}
	var s numbered
	at, s.bound = r.boundBefore(at)
	ok := r.behind(&s, next) || r.before(&s, q, at, next)
	if q.Unit.Dim == calc.Torque {
		return ofTorque(s)
	}
	if !ok || s.head == "" || isVague(s.head) {
		return s, false
	}
	r.conditions(&s)
	return s, true
}

// ofTorque makes the bolt the head of a torque: that it is one, the unit says.
func ofTorque(s numbered) (numbered, bool) {
	names := append([]string{s.head}, s.marks...)
	names = slices.DeleteFunc(names, func(n string) bool { return n == "" || n == "torqu" || n == "tighten" })
	s.head, s.marks, s.way = "", nil, ""
	if len(names) > 0 {
		s.head, s.marks = names[0], names[1:]
	}
	return s, true
}

// ranges reports a number that is an end of a range: "3 to 5 mm", "0 V to 16 V".
func (r *subjectReader) ranges(at, next int) bool {
	link := func(lower string) bool { return lower == "to" || lower == "and" || lower == "through" }
	if next+1 < len(r.words) && r.words[next].Lower == "to" && r.words[next+1].Number {
		return true
	}
	if next < len(r.words) && r.words[next].Number && r.words[next].Break >= phrase.Hyphen && r.words[next].Break != phrase.Comma {
		return true // 3-5 mm
	}
	if at > 0 && r.words[at].Break == phrase.Hyphen && r.words[at-1].Number {
		return true
	}
	for k := at - 2; k >= max(0, at-3); k-- {
		if link(r.words[at-1].Lower) && r.words[k].Number {
			between := k > 0 && (r.words[k-1].Lower == "between" || r.words[k-1].Lower == "from")
			return r.words[at-1].Lower != "and" || between
		}
	}
	return false
}

// loose reports a number that the text itself calls inexact, or rules out.
func (r *subjectReader) loose(at int) bool {
	for k := at - 1; k >= 0; k-- {
		switch r.words[k].Lower {
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

// general reports a number of a thing that stands for any of its kind: "a fuse
// of 30 A melts the wire". In an order, "fit a fuse of 10 A", it is one.
func (r *subjectReader) general(at int) bool {
	for k := at - 1; k >= max(0, at-2-mostWords); k-- {
		w := r.words[k].Lower
		if w == "a" || w == "an" {
			from, ok := action(r.words)
			return !ok || !r.lexicon.orders(r.words[from:])
		}
		if determines(w) || r.words[k+1].Break >= phrase.Comma {
			return false
		}
	}
	return false
}

// boundBefore takes the words of a bound off before a number.
func (r *subjectReader) boundBefore(at int) (int, string) {
	if at == 0 || r.words[at].Break >= phrase.Clause {
		return at, ""
	}
	last := r.words[at-1].Lower
	two := ""
	if at > 1 {
		two = r.words[at-2].Lower
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
func (r *subjectReader) behind(s *numbered, next int) bool {
	end := r.nameEnd(next)
	if end == next {
		return false
	}
	r.take(s, next, end)
	r.placed(s, end)
	return true
}

// nameEnd is where the name ends that starts at a word.
func (r *subjectReader) nameEnd(start int) int {
	end := start
	for end < len(r.words) && end-start < mostWords && r.words[end].Break <= phrase.Hyphen && r.names(end) {
		if end > start && r.verb(end) && (end+1 == len(r.words) || determines(r.words[end+1].Lower) || opens(r.words[end+1].Lower)) {
			break // "the 10 A fuse feeds the lamp"
		}
		end++
	}
	return end
}

// names reports a word that can be part of the name of a thing.
func (r *subjectReader) names(i int) bool {
	w := &r.words[i]
	if _, unit := calc.LookupUnit(w.Text); unit || w.Number || notVerb(w.Lower) || opens(w.Lower) || determines(w.Lower) || finite(w.Lower) || measures(w.Lower) {
		return false
	}
	switch w.Lower {
	case "s", "then", "about", "exactly", "only", "again", "apart", "away", "into", "onto", "off", "up", "down", "out", "across", "per", "above", "below",
		"that", "reads", "read", "against", "around", "past", "back", "more", "less", "least", "most", "too", "until", "while", "be", "been", "rated", "set":
		return false
	}
	return !isAdverb(w.Lower) && len(w.Lower) > 1
}

// verb reports a word that may be an action.
func (r *subjectReader) verb(i int) bool {
	w := r.words[i].Lower
	return r.lexicon.verbs[w] || r.lexicon.verbs[strings.TrimSuffix(w, "s")] || r.lexicon.verbs[strings.TrimSuffix(w, "es")]
}

// states reports a verb in the third person: "the bolt holds at 9 N·m".
func (r *subjectReader) states(i int) bool {
	w := r.words[i].Lower
	return strings.HasSuffix(w, "s") && !r.lexicon.verbs[w] && r.verb(i) && i > 0 && r.names(i-1)
}

// take makes words the head of the subject and what marks it.
func (r *subjectReader) take(s *numbered, first, end int) {
	s.head = r.words[end-1].Stem
	for _, w := range r.words[first : end-1] {
		s.marks = append(s.marks, w.Stem)
	}
}

// placed takes in what tells where the thing is: "for the lamp", "on the wire".
func (r *subjectReader) placed(s *numbered, at int) {
	for at+1 < len(r.words) && r.words[at].Break <= phrase.Hyphen && opens(r.words[at].Lower) {
		at++
		for at < len(r.words) && determines(r.words[at].Lower) {
			at++
		}
		end := r.nameEnd(at)
		for _, w := range r.words[at:end] {
			s.marks = append(s.marks, w.Stem)
		}
		if end == at {
			return
		}
		at = end
	}
}

// before reads a name that leads to the number: "a fuse of 10 A", "the fuse is
// 10 A", "cut the wire to 20 mm", "fuse: 10 A".
func (r *subjectReader) before(s *numbered, q *quantity, at, next int) bool {
	if next < len(r.words) && r.words[next].Break == phrase.NoBreak && (measures(r.words[next].Lower) || distance(r.words[next].Lower)) {
		s.way = r.words[next].Lower
		if !measures(s.way) {
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
	if first+1 == end && r.verb(first) && joined != "of" && joined != "is" && q.Unit.Dim != calc.Torque && r.words[at].Break < phrase.Clause && (first == 0 || !determines(r.words[first-1].Lower)) {
		return false // "stand at 6 m"
	}
	r.take(s, first, end)
	r.owner(s, first)
	if verb := r.order(first); verb >= 0 && s.way == "" && (joined == "to" || joined == "at" || joined == "") {
		s.way += neutral(r.words[verb].Stem)
	}
	return true
}

// leadIn takes off what leads from a name to the number, and says which word
// that was; false where the number stands apart.
func (r *subjectReader) leadIn(s *numbered, q *quantity, at int) (end int, joined string, ok bool) {
	end = at
	if end == 0 {
		return 0, "", false
	}
	if r.words[at].Break < phrase.Comma && joins(r.words[end-1].Lower) {
		end--
		joined = r.words[end].Lower
		for end > 0 && (finite(r.words[end-1].Lower) || r.words[end-1].Lower == "be" || joined != "of" && r.states(end-1)) {
			end-- // "is at", "must be", "holds at", but not "stops at"
			if r.states(end) {
				s.way += neutral(r.words[end].Stem)
			}
		}
		return end, joined, true
	}
	if r.words[at].Break >= phrase.Comma {
		before := r.text[:q.number.Start]
		return end, "", strings.HasSuffix(strings.TrimRight(before, " ("), ":") || strings.HasSuffix(before, "(")
	}
	if r.states(end - 1) {
		end-- // "the fuse carries 6 A"
		s.way += r.words[end].Stem
	}
	return end, "", true
}

// nameStart is where the name starts that ends before a word.
func (r *subjectReader) nameStart(end int) int {
	first := end
	for first > 0 && end-first < mostWords && r.names(first-1) && (first == end || r.words[first].Break <= phrase.Hyphen) {
		first--
	}
	return first
}

// owner takes in whose the thing is: "the fuse of the lamp is", "the lamp's fuse".
func (r *subjectReader) owner(s *numbered, first int) {
	i := first - 1
	for i >= 0 && determines(r.words[i].Lower) {
		i--
	}
	if i < 1 || r.words[i+1].Break >= phrase.Comma {
		return
	}
	switch r.words[i].Lower {
	case "s":
		for _, w := range r.words[r.nameStart(i):i] {
			s.marks = append(s.marks, w.Stem)
		}
	case "of", "for", "on", "over", "at", "in", "across", "behind":
		start := r.nameStart(i)
		if start == i || isVague(r.words[i-1].Stem) { // "the value on the fuse" is the fuse's
			return
		}
		s.marks = append(s.marks, s.head)
		for _, w := range r.words[start : i-1] {
			s.marks = append(s.marks, w.Stem)
		}
		s.head = r.words[i-1].Stem
	}
}

// order is the place of the verb that has the thing at first for its object,
// -1 where there is none.
func (r *subjectReader) order(first int) int {
	i := first - 1
	for i >= 0 && determines(r.words[i].Lower) {
		i--
	}
	if i >= 0 && r.words[i+1].Break < phrase.Comma && r.verb(i) {
		return i
	}
	return -1
}

// conditions takes in what the number holds for: "where the run is long, ...".
func (r *subjectReader) conditions(s *numbered) {
	in := false
	for i := range r.words {
		w := &r.words[i]
		switch w.Lower {
		case "if", "where", "when", "for", "with":
			in = true
			continue
		}
		if w.Break >= phrase.Comma {
			in = false
		}
		if in && r.names(i) && w.Stem != s.head && !slices.Contains(s.marks, w.Stem) {
			s.marks = append(s.marks, w.Stem)
		}
	}
}
