package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
)

var oneAction = &check.Rule{
	Name:     "one-action",
	Severity: finding.Warning,
	Doc: `A step is one action

One action can be ticked off, linked to and warned of. Two that are done
together may stand in one step where the second takes up the first: "Read the
fuse and write it down."`,
	Check: func(p *check.Pass) {
		p.Facts.Actions(func(t *check.Passage, s english.Sentence) {
			if at := secondAction(p, t.In(s)); at > 0 {
				p.Report(t.Span(s.First+at, s.Last), "the step has a second action", "make a step of its own of it")
			}
		})
	},
}

// secondAction is the word at which a second action starts, one that is not
// done together with the first; 0 where there is none.
func secondAction(p *check.Pass, words []english.Word) int {
	at, ok := english.Action(words)
	if !ok || !p.Shared.Lexicon.Orders(words[at:]) {
		return 0
	}
	for i := at + 1; i+1 < len(words); i++ {
		joined := words[i-1].Lower == "then" || (words[i-1].Lower == "and" && words[i].Break < english.Comma)
		if !joined || !p.Shared.Lexicon.Verbs[words[i].Lower] || english.Finite(words[i+1].Lower) {
			continue
		}
		if i >= 2 && p.Shared.Lexicon.Verbs[words[i-2].Lower] && i-2 == at {
			continue // glue and clamp the box: one object
		}
		rest := words[i+1:]
		if words[i-1].Lower == "then" && sequel(words, at, i) {
			return i
		}
		if words[i-1].Lower == "and" && english.Determines(rest[0].Lower) && !takesUp(rest) && !recording(words[i].Lower) {
			return i
		}
	}
	return 0
}

// sequel reports whether a then goes on to another action, not one that
// answers an opening condition ("if it is dead, then cut").
func sequel(words []english.Word, at, i int) bool { return i > at+1 }

// takesUp reports words that speak of the first action's object: it, them,
// both.
func takesUp(words []english.Word) bool {
	for _, w := range words {
		switch w.Lower {
		case "it", "them", "both", "its", "their", "that", "this", "each", "same":
			return true
		}
	}
	return false
}

// recording reports whether a verb only notes what the first action gave.
func recording(lower string) bool {
	switch lower {
	case "write", "note", "record", "read", "watch", "look", "photograph", "mark", "compare", "check", "listen", "feel", "hold", "keep", "count", "see", "leave", "save", "stop", "tick", "sign":
		return true
	}
	return false
}
