package english

import "strings"

// counts reports whether a hit is there and being done, not ruled out by its
// sentence.
func (p *part) counts(t *Text, in Sentence, first, last int) bool {
	if !p.doing {
		return !absent(t, in, first)
	}
	return p.done(t, in, first) && !forbidden(t, in, first, last)
}

// absent reports whether the sentence says that a thing is not there: "no
// airbag", "without an airbag".
func absent(t *Text, in Sentence, first int) bool {
	for i := first - 1; i >= max(in.First, first-2); i-- {
		w := &t.Words[i]
		switch w.Lower {
		case "no", "without", "neither", "nor":
			return i+1 >= len(t.Words) || t.Words[i+1].Lower != "longer"
		}
		if t.Words[i+1].Break >= Comma {
			return false
		}
	}
	return false
}

// done reports whether the verb at word i is used as one: an order, an
// infinitive, a gerund or a passive.
func (p *part) done(t *Text, in Sentence, i int) bool {
	w := &t.Words[i]
	base := p.isBase(w)
	gerund := strings.HasSuffix(w.Lower, "ing")
	if !base && !gerund {
		return i > in.First && isPassive(t, in, i)
	}
	if i == in.First {
		return gerund || !nounUse(t, in, i)
	}
	before := &t.Words[i-1]
	if w.Break == Hyphen {
		return false // hand-drill
	}
	if gerund {
		return leadsToGerund(before.Lower) || w.Break >= Comma
	}
	if leadsToVerb(before.Lower) {
		return !nounUse(t, in, i)
	}
	if w.Break >= Comma || before.Lower == "and" || before.Lower == "or" {
		return !nounUse(t, in, i) && !listed(t, in, i)
	}
	return base && isPassive(t, in, i)
}

// isBase reports whether a word stands in the form that the phrase gives: the
// bare verb.
func (p *part) isBase(w *Word) bool {
	for _, l := range p.words[0].lowers {
		if w.Lower == l {
			return true
		}
	}
	return false
}

// leadsToVerb reports whether a bare verb after the word is being done.
func leadsToVerb(lower string) bool {
	switch lower {
	case "to", "then", "you", "now", "first", "again", "also", "only", "once", "must", "can", "may", "will", "always",
		"not", "never", "don", "t", "cannot", "they", "we", "let", "when", "if", "where", "i":
		return true
	}
	return strings.HasSuffix(lower, "ly")
}

// leadsToGerund reports whether a gerund after the word is being done.
func leadsToGerund(lower string) bool {
	switch lower {
	case "before", "after", "by", "while", "when", "without", "for", "during", "of", "than", "from", "avoid", "start", "stop", "finish", "keep",
		"never", "and", "or", "if", "in", "on", "is", "are", "no", "not":
		return true
	}
	return strings.HasSuffix(lower, "ly")
}

// nounUse reports whether a word looks like a verb but names a thing: what
// stands behind it gives it away.
func nounUse(t *Text, in Sentence, i int) bool {
	if i+1 >= in.Last {
		return false
	}
	next := &t.Words[i+1]
	if next.Break == Hyphen {
		return true
	}
	if next.Break >= Comma {
		return false
	}
	switch next.Lower {
	case "bit", "bits", "is", "are", "was", "were", "has", "have", "stop", "point", "points", "does", "stand", "stands", "sheet", "time", "tip", "station":
		return true
	}
	return false
}

// listed reports whether a word is in a list of things: "a step bit, file and
// oil".
func listed(t *Text, in Sentence, i int) bool {
	if i+1 >= in.Last {
		// the last word of the sentence: a verb only where the first is one too
		// and stands as bare as this one, "Mark, drill, deburr."
		return in.First+1 < in.Last && t.Words[in.First+1].Break < Comma
	}
	next := &t.Words[i+1]
	bareFirst := in.First+1 < in.Last && (t.Words[in.First+1].Break >= Comma || t.Words[in.First+1].Lower == "and")
	return !bareFirst && (next.Break >= Comma || next.Lower == "and" || next.Lower == "or")
}

// isPassive reports whether a participle follows a form of be: "is drilled".
func isPassive(t *Text, in Sentence, i int) bool {
	for k := i - 1; k >= max(in.First, i-2); k-- {
		if t.Words[k+1].Break >= Comma {
			return false
		}
		switch t.Words[k].Lower {
		case "is", "are", "be", "been", "being", "gets", "get":
			return true
		}
	}
	return false
}

// forbidden reports whether the sentence forbids a verb. Where a condition
// follows (unless, until, without), it is done after all.
func forbidden(t *Text, in Sentence, first, last int) bool {
	if last < in.Last && t.Words[last].Break < Comma {
		switch t.Words[last].Lower {
		case "nothing", "no", "none", "neither":
			return true
		}
	}
	if !denied(t, in, first) {
		return false
	}
	for i := last; i < in.Last; i++ {
		switch t.Words[i].Lower {
		case "unless", "until", "without", "before":
			return false
		}
	}
	return true
}

// denied looks for a no before the verb, back to where another thought starts.
func denied(t *Text, in Sentence, first int) bool {
	for i := first - 1; i >= in.First; i-- {
		if t.Words[i+1].Break >= Clause {
			return false
		}
		if t.Words[i+1].Break == Comma && !orders(t, in) {
			return false
		}
		switch t.Words[i].Lower {
		case "not", "never", "without", "avoid", "cannot", "nobody", "instead", "rather", "don", "no", "nor", "neither", "needn":
			return true
		case "but", "then", "and":
			if t.Words[i].Lower != "and" || !orders(t, in) {
				return false
			}
		}
	}
	return false
}

// orders reports whether a sentence forbids from its first word: its no goes
// for the whole list that follows.
func orders(t *Text, in Sentence) bool {
	switch t.Words[in.First].Lower {
	case "do", "never", "don":
		return true
	}
	return false
}
