package check

import (
	"baybook/site/check/phrase"
	"baybook/site/finding"
)

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
