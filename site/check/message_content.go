package check

import (
	"baybook/site/check/phrase"
	"baybook/site/sheet"
)

var messageContent = &Rule{
	Name: "message-content",
	Doc: `A message says what the hazard does and how to avoid it

Hazard, consequence, avoidance, in that order (ANSI Z535.6): first a statement
with what may happen, to whom or to what; then an order that avoids it. A
message without consequence is not believed, one without avoidance is of no
use.

Bad:

	## Before you start

	> **WARNING: Exhaust gas.** Run the engine outdoors or with extraction, for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas fills a bay and kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			consequence, avoidance := p.content(m)
			switch {
			case !consequence && !avoidance:
				p.Report(m.Span, "the message says neither what may happen nor how to avoid it", "add both behind the title")
			case !consequence:
				p.Report(m.Span, "the message does not say what may happen", "put a sentence with the consequence before the order: what it burns, breaks, crushes or costs")
			case !avoidance:
				p.Report(m.Span, "the message does not say how to avoid it", "end with an order: what to do, or what not to do")
			}
		}
	},
}

// content reports whether a message states a consequence and gives an order.
func (p *Pass) content(m *sheet.Message) (consequence, avoidance bool) {
	for _, t := range p.facts.messageTexts[m] {
		for _, s := range t.Sentences {
			words := t.In(s)
			order := p.isOrder(words)
			avoidance = avoidance || order || givesRule(words)
			if !order {
				consequence = consequence || p.tellsHarm(words)
				continue
			}
			// An order may carry its consequence: "..., or it burns".
			for i, w := range words {
				if i > 0 && (w.Break >= phrase.Comma || w.Lower == "because" || w.Lower == "or") {
					consequence = consequence || p.tellsHarm(words[i:]) && (w.Lower == "or" || w.Lower == "because" || w.Break == phrase.Clause || w.Lower == "for")
				}
			}
		}
	}
	return consequence, avoidance
}

func (p *Pass) tellsHarm(words []phrase.Word) bool {
	for _, w := range words {
		if p.reader.lexicon.harms[w.Stem] {
			return true
		}
	}
	return false
}

// isOrder reports whether a sentence is an order, a condition before it or
// not.
func (p *Pass) isOrder(words []phrase.Word) bool {
	at, ok := action(words)
	return ok && p.reader.lexicon.orders(words[at:])
}

// givesRule reports a rule that is no order in form: "No flame in the
// vehicle", "Hearing protection on", "Only a qualified person works there".
func givesRule(words []phrase.Word) bool {
	if len(words) == 0 {
		return false
	}
	switch words[0].Lower {
	case "no", "only", "nobody", "never", "none", "nothing":
		return true
	}
	for _, w := range words {
		switch w.Lower {
		case "must", "never", "first", "only":
			return true
		}
	}
	return len(words) > 1 && !finiteAny(words)
}

// finiteAny reports whether any word makes the words a statement.
func finiteAny(words []phrase.Word) bool {
	for _, w := range words {
		if finite(w.Lower) {
			return true
		}
		if n := len(w.Lower); n > 3 && w.Lower[n-1] == 's' && w.Lower[n-2] != 's' && w.Stem != w.Lower {
			return true // a verb or a plural; to be on the safe side a statement
		}
	}
	return false
}
