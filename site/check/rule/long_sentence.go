package rule

import (
	"strconv"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
)

var longSentence = &check.Rule{
	Name:     "long-sentence",
	Severity: finding.Warning,
	Doc: `A sentence of a step has at most 25 words

A longer one is read twice, with a tool in the hand.`,
	Check: func(p *check.Pass) {
		const most = 25
		p.Facts.Instructions(func(t *check.Passage, s english.Sentence) {
			if n := countWords(t, s); n > most {
				p.Report(t.SentenceSpan(s), "the sentence has "+strconv.Itoa(n)+" words; at most "+strconv.Itoa(most)+" are read at one go", "make two sentences of it")
			}
		})
	},
}

// countWords counts as a reader does: a number and its unit are one, and so
// are words joined by a hyphen.
func countWords(t *check.Passage, s english.Sentence) int {
	n := 0
	for i := s.First; i < s.Last; i++ {
		w := &t.Words[i]
		if w.Break == english.Hyphen || i > s.First && t.Words[i-1].Number && w.Start-t.Words[i-1].End <= 1 && !isLong(w.Lower) || w.Lower == "s" {
			continue
		}
		n++
	}
	return n
}

// isLong reports whether a word is too long for a unit.
func isLong(lower string) bool { return len(lower) > 4 }
