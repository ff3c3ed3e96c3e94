package check

import (
	"baybook/site/check/phrase"
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
