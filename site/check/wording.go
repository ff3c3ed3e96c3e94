package check

import (
	"strconv"
	"strings"

	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// actions runs over the own sentence of every step: its passage and the
// sentence's words.
func (p *Pass) actions(do func(t *passage, s phrase.Sentence)) {
	for _, t := range p.facts.passages {
		if t.step != nil && t.first && t.message == nil && t.kind == stepText && len(t.Sentences) > 0 {
			do(t, t.Sentences[0])
		}
	}
}

// instructions runs over every sentence of the steps' text.
func (p *Pass) instructions(do func(t *passage, s phrase.Sentence)) {
	for _, t := range p.facts.passages {
		if t.step == nil || t.message != nil || t.kind != stepText {
			continue
		}
		for _, s := range t.Sentences {
			do(t, s)
		}
	}
}

var imperativeFirst = &Rule{
	Name:     "imperative-first",
	Severity: finding.Warning,
	Doc: `A step starts with what to do

The first word of a step is a verb, or a condition stands before it: "If the
lamp stays on, stop." A tech reads the first word and acts.

Bad:

	## Steps

	1. The lamp is switched on.

Good:

	## Steps

	1. Switch the lamp on.
`,
	Check: func(p *Pass) {
		p.actions(func(t *passage, s phrase.Sentence) {
			words := t.In(s)
			at, ok := action(words)
			if ok && p.reader.lexicon.orders(words[at:]) {
				return
			}
			end := s.First + at + 1
			p.Report(t.span(s.First+at, end), "the step does not start with what to do", "start with a verb, such as Remove or Measure, or with If or When and a comma")
		})
	},
}

var longSentence = &Rule{
	Name:     "long-sentence",
	Severity: finding.Warning,
	Doc: `A sentence of a step has at most 25 words

A longer one is read twice, with a tool in the hand.

Bad:

	## Steps

	1. Look at the lamp while the key is turned slowly from off to on and back again by a second person who sits in the cab and watches the panel too.

Good:

	## Steps

	1. Look at the lamp while a second person turns the key.
`,
	Check: func(p *Pass) {
		const most = 25
		p.instructions(func(t *passage, s phrase.Sentence) {
			if n := countWords(t, s); n > most {
				p.Report(t.sentenceSpan(s), "the sentence has "+strconv.Itoa(n)+" words; at most "+strconv.Itoa(most)+" are read at one go", "make two sentences of it")
			}
		})
	},
}

// countWords counts as a reader does: a number and its unit are one, and so
// are words joined by a hyphen.
func countWords(t *passage, s phrase.Sentence) int {
	n := 0
	for i := s.First; i < s.Last; i++ {
		w := &t.Words[i]
		if w.Break == phrase.Hyphen || i > s.First && t.Words[i-1].Number && w.Start-t.Words[i-1].End <= 1 && !isLong(w.Lower) || w.Lower == "s" {
			continue
		}
		n++
	}
	return n
}

// isLong reports a word that is too long for a unit.
func isLong(lower string) bool { return len(lower) > 4 }

var noShould = &Rule{
	Name:     "no-should",
	Severity: finding.Warning,
	Doc: `Steps and messages say what is, not what should be

"Should" leaves open whether it must. Write an order, or must, or may.

Bad:

	## Steps

	1. Look at the lamp. It should light.

Good:

	## Steps

	1. Look at the lamp. It lights.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.step == nil && t.message == nil && !t.in("Prove it") {
				continue
			}
			for i, w := range t.Words {
				if w.Lower == "should" {
					p.Report(t.span(i, i+1), "“should” leaves open whether it must", "write an order, or must, or may")
				}
			}
		}
	},
}

var conditionFirst = &Rule{
	Name:     "condition-first",
	Severity: finding.Warning,
	Doc: `A condition stands before the action that hangs on it

A tech who reads "cut the wire if it is dead" has cut before reading on.

Bad:

	## Steps

	1. Switch the lamp on if the cover is closed.

Good:

	## Steps

	1. If the cover is closed, switch the lamp on.
`,
	Check: func(p *Pass) {
		p.actions(func(t *passage, s phrase.Sentence) {
			words := t.In(s)
			at, ok := action(words)
			if !ok || !p.reader.lexicon.orders(words[at:]) || asks(words[at].Lower) {
				return
			}
			for i := at + 1; i < len(words); i++ {
				lower := words[i].Lower
				if words[i].Break >= phrase.Clause {
					return
				}
				if lower != "if" && lower != "unless" {
					continue
				}
				if before := words[i-1].Lower; before == "only" || before == "even" || before == "as" || asks(before) || before == "or" || before == "see" {
					continue
				}
				p.Report(t.span(s.First+i, s.Last), "the condition stands behind the action", "put it before the action, with a comma")
				return
			}
		})
	},
}

// asks reports a verb whose if is its object: check if it is dead.
func asks(lower string) bool {
	switch lower {
	case "check", "ask", "see", "note", "look", "test", "find", "prove", "decide", "tell", "write", "record", "judge", "know", "feel", "try", "watch", "listen", "say", "show":
		return true
	}
	return false
}

var vagueWord = &Rule{
	Name:     "vague-word",
	Severity: finding.Warning,
	Doc: `Steps and messages give amounts that can be checked

"As required", "properly", "tight enough" mean something else to each reader.
Give a number, a place, or what it looks like when it is right.

Bad:

	## Steps

	1. Clean the glass properly.

Good:

	## Steps

	1. Clean the glass until no streak shows.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.kind != stepText && t.message == nil && !t.in("Prove it") {
				continue
			}
			for _, s := range t.Sentences {
				for _, hit := range p.reader.lexicon.vague.Find(t.Text, s, phrase.Said) {
					p.Report(t.span(hit.First, hit.Last), "“"+t.Source[t.Words[hit.First].Start:t.Words[hit.Last-1].End]+"” means something else to each reader", "give a number, a place, or what it looks like when it is right")
				}
			}
		}
	},
}

var andOr = &Rule{
	Name:     "and-or",
	Severity: finding.Warning,
	Doc: `Neither and/or nor etc. stands in a step

Both leave the choice to the reader without saying so.

Bad:

	## Steps

	1. Clean the glass and/or the frame.

Good:

	## Steps

	1. Clean the glass and the frame.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.kind != stepText && t.message == nil {
				continue
			}
			for _, bad := range [...]string{"and/or", "etc."} {
				if at := strings.Index(t.Source, bad); at >= 0 {
					p.Report(t.prose.Span(at, at+len(bad)), "“"+bad+"” leaves the choice open", "say which, or list them")
				}
			}
		}
	},
}

var oneAction = &Rule{
	Name:     "one-action",
	Severity: finding.Warning,
	Doc: `A step is one action

One action can be ticked off, linked to and warned of. Two that are done
together may stand in one step where the second takes up the first: "Read the
fuse and write it down."

Bad:

	## Steps

	1. Close the cover, then switch the lamp on.

Good:

	## Steps

	1. Close the cover.
	2. Switch the lamp on.
`,
	Check: func(p *Pass) {
		p.actions(func(t *passage, s phrase.Sentence) {
			if at := p.secondAction(t.In(s)); at > 0 {
				p.Report(t.span(s.First+at, s.Last), "the step has a second action", "make a step of its own of it")
			}
		})
	},
}

// secondAction is the word at which a second action starts, one that is not
// done together with the first; 0 where there is none.
func (p *Pass) secondAction(words []phrase.Word) int {
	at, ok := action(words)
	if !ok || !p.reader.lexicon.orders(words[at:]) {
		return 0
	}
	for i := at + 1; i+1 < len(words); i++ {
		joined := words[i-1].Lower == "then" || (words[i-1].Lower == "and" && words[i].Break < phrase.Comma)
		if !joined || !p.reader.lexicon.verbs[words[i].Lower] || finite(words[i+1].Lower) {
			continue
		}
		if i >= 2 && p.reader.lexicon.verbs[words[i-2].Lower] && i-2 == at {
			continue // glue and clamp the box: one object
		}
		rest := words[i+1:]
		if words[i-1].Lower == "then" && sequel(words, at, i) {
			return i
		}
		if words[i-1].Lower == "and" && determines(rest[0].Lower) && !takesUp(rest) && !recording(words[i].Lower) {
			return i
		}
	}
	return 0
}

// sequel reports a then that goes on to another action, not one that answers
// an opening condition ("if it is dead, then cut").
func sequel(words []phrase.Word, at, i int) bool { return i > at+1 }

// takesUp reports words that speak of the first action's object: it, them,
// both.
func takesUp(words []phrase.Word) bool {
	for _, w := range words {
		switch w.Lower {
		case "it", "them", "both", "its", "their", "that", "this", "each", "same":
			return true
		}
	}
	return false
}

// recording reports a verb that only notes what the first action gave.
func recording(lower string) bool {
	switch lower {
	case "write", "note", "record", "read", "watch", "look", "photograph", "mark", "compare", "check", "listen", "feel", "hold", "keep", "count", "see", "leave", "save", "stop", "tick", "sign":
		return true
	}
	return false
}

var bareNumber = &Rule{
	Name:     "number-without-unit",
	Severity: finding.Warning,
	Doc: `A measured number has its unit

"Set the stop to 3" is 3 mm to one reader and 3 turns to the next.

Bad:

	## Steps

	1. Set the stop to 3.

Good:

	## Steps

	1. Set the stop to 3 mm (common practice).
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.kind != stepText || t.step == nil {
				continue
			}
			list := t.quantities()
			for i, q := range list {
				if q.Bare && !isLink(t, q.number) && unitMissing(t.Source, &q, i+1 < len(list) && !list[i+1].Bare && list[i+1].number.Start-q.number.End <= 5) {
					p.Report(t.prose.Span(q.number.Start, q.number.End), "the number "+q.Number+" has no unit", "write the unit that the instrument shows, or what is counted")
				}
			}
		}
	},
}

// unitMissing reports a number that measures something and says not what: one
// at the end of a phrase behind to, at or of, or one with decimals.
func unitMissing(text string, q *quantity, range_ bool) bool {
	if range_ {
		return false // 11 to 13 V
	}
	after := strings.TrimLeft(text[q.number.End:], " ")
	ends := after == "" || strings.ContainsRune(".,;:)", rune(after[0]))
	before := lastWord(text[:q.number.Start])
	switch before {
	case "to", "at", "of", "than", "about", "least", "most", "under", "over", "reads", "exactly":
		return ends && !reference(text[:q.number.Start]) && !isTerminal(q.Number) && q.Number != "1"
	}
	return false
}

// isTerminal reports a terminal designation of DIN 72552.
func isTerminal(number string) bool {
	switch number {
	case "15", "30", "31", "49", "50", "53", "54", "56", "58", "75", "85", "86", "87":
		return true
	}
	return false
}

func lastWord(text string) string {
	fields := strings.Fields(text)
	if len(fields) == 0 {
		return ""
	}
	return strings.ToLower(fields[len(fields)-1])
}

// reference reports text that leads to the number of a place: "go back to
// step", "of section", "from 4 to".
func reference(text string) bool {
	fields := strings.Fields(strings.ToLower(text))
	for i := len(fields) - 1; i >= max(0, len(fields)-4); i-- {
		switch strings.Trim(fields[i], ".,:") {
		case "step", "steps", "section", "figure", "table", "slot", "pin", "pins", "terminal", "channel", "class", "page", "position", "row", "paragraph", "factor", "ratio", "level", "number", "times":
			return true
		}
	}
	return false
}

// isLink reports whether a number is part of a computed value or a reading,
// whose own rules look at it.
func isLink(t *passage, at sheet.Span) bool {
	span := t.prose.Span(at.Start, at.End)
	for c := t.node.FirstChild(); c != nil; c = c.NextSibling() {
		switch n := c.(type) {
		case *sheet.Value:
			if span.Start >= n.Span.Start && span.Start < n.Span.End {
				return true
			}
		case *sheet.Reading:
			if span.Start >= n.Span.Start && span.Start < n.Span.End {
				return true
			}
		}
	}
	return false
}
