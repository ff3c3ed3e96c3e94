package check

import (
	"strconv"

	"baybook/site/check/phrase"
	"baybook/site/finding"
)

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
