package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
)

var conditionFirst = &check.Rule{
	Name:     "condition-first",
	Severity: finding.Warning,
	Doc: `A condition stands before the action that hangs on it

A tech who reads "cut the wire if it is dead" has cut before reading on.`,
	Check: func(p *check.Pass) {
		p.Facts.Actions(func(t *check.Passage, s english.Sentence) {
			words := t.In(s)
			at, ok := english.Action(words)
			if !ok || !p.Shared.Lexicon.Orders(words[at:]) || asks(words[at].Lower) {
				return
			}
			for i := at + 1; i < len(words); i++ {
				lower := words[i].Lower
				if words[i].Break >= english.Clause {
					return
				}
				if lower != "if" && lower != "unless" {
					continue
				}
				if before := words[i-1].Lower; before == "only" || before == "even" || before == "as" || asks(before) || before == "or" || before == "see" {
					continue
				}
				p.Report(t.Span(s.First+i, s.Last), "the condition stands behind the action", "put it before the action, with a comma")
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
