package find

import "strings"

// maxTerms is how many words of a query count; a posting's matched words are
// kept as that many bits.
const maxTerms = 16

// How well an entry of the vocabulary fits a word of the query, in percent.
const (
	fitExact      = 100
	fitPhrase     = 200
	fitName       = 95 // another name for the same thing
	fitForm       = 60 // -ing, -ed
	fitStart      = 50 // the start of a word; up to 90 for nearly the whole of it
	fitTypo       = 45
	fitStartTypo  = 35 // the start of a word, with a typing error
	typoLetters   = 4  // shorter words are not searched with a typing error
	maxStartWords = 4096
)

// term is a word of the query and the entries that it stands for.
type term struct {
	raw  string // folded
	word string // and singular
	last bool   // it may still be being typed
	alts []alt
}

// alt is an entry of the vocabulary that a term stands for.
type alt struct {
	entry int32
	fit   int32
}

// parse takes the words of a query apart. Words that tell nothing are left out,
// but for one at the end of a query of nothing else: "the" may become "thermal".
func parse(query string) []term {
	var kept []term
	var stop term
	s := scanner{text: query}
	for s.next() && len(kept) < maxTerms {
		raw := string(s.word)
		t := term{raw: raw, word: singular(raw), last: s.end == len(query)}
		switch {
		case isStop(raw):
			stop = t
		case !isDigit(rune(raw[0])) && said(kept, t.word):
			// A word said twice counts once.
		default:
			kept = append(kept, t)
		}
	}
	if len(kept) == 0 && stop.last {
		return []term{stop}
	}
	return kept
}

// said reports whether a word is among the terms.
func said(terms []term, word string) bool {
	for i := range terms {
		if terms[i].word == word {
			return true
		}
	}
	return false
}

// expand finds what each term stands for. With typos, typing errors are looked
// for even in words that the book knows.
func (x *Index) expand(terms []term, typos bool) {
	for i := range terms {
		t := &terms[i]
		t.alts = nil
		x.addWord(t, t.word, fitExact)
		for _, f := range forms(t.raw) {
			x.addWord(t, f, fitForm)
		}
		if t.last {
			x.addStarts(t, t.raw)
		}
	}
	x.addJoined(terms)
	x.addNames(terms)
	for i := range terms {
		t := &terms[i]
		if len(t.alts) == 0 && len(t.raw) > 2 {
			x.addStarts(t, t.raw)
		}
		if typos || len(t.alts) == 0 {
			x.addTypos(t)
		}
	}
}

func (x *Index) addWord(t *term, text string, fit int32) {
	if e, ok := x.lookup(text); ok {
		t.alts = append(t.alts, alt{e, fit})
	}
}

// addStarts adds the entries that begin as the term does.
func (x *Index) addStarts(t *term, start string) {
	from, _ := x.lookup(start)
	for e := from; int(e) < len(x.words) && e-from < maxStartWords; e++ {
		text := x.words[e].text
		if !strings.HasPrefix(text, start) {
			break
		}
		t.alts = append(t.alts, alt{e, fitStart + int32(40*len(start)/len(text))})
	}
	if root, cut := strings.CutSuffix(start, "ie"); cut && len(root) > 2 {
		x.addWord(t, root+"y", fitStart) // batterie: batteries is filed as battery
	}
}

// addJoined lets two words of the query stand for one of the book: heat shrink
// finds heatshrink, GR-0 the numbers that begin so.
func (x *Index) addJoined(terms []term) {
	for i := 0; i+1 < len(terms); i++ {
		if second := terms[i+1].raw; !isDigit(rune(second[0])) && min(len(terms[i].raw), len(second)) < 2 {
			continue // a letter alone is hardly half a word
		}
		var both term
		joined := terms[i].raw + terms[i+1].raw
		x.addWord(&both, singular(joined), fitExact)
		if terms[i+1].last {
			x.addStarts(&both, joined)
		}
		terms[i].alts = append(terms[i].alts, both.alts...)
		terms[i+1].alts = append(terms[i+1].alts, both.alts...)
	}
}

// addNames adds the glossary's other names to every term of a phrase. A name
// counts once, however many terms it stands for; the phrase itself, found word
// for word, counts double.
func (x *Index) addNames(terms []term) {
	for from := range terms {
		phrase := ""
		for to := from; to < len(terms) && to-from < maxPhrase; to++ {
			if to > from {
				phrase += " "
			}
			phrase += terms[to].word
			x.addOthers(terms[from:to+1], phrase)
		}
	}
}

// addOthers adds the other names of a phrase to its terms.
func (x *Index) addOthers(terms []term, phrase string) {
	for n := range x.names {
		if x.names[n].phrase != phrase {
			continue
		}
		if len(terms) > 1 {
			x.addToAll(terms, phrase, fitPhrase)
		}
		for _, g := range x.names[n].groups {
			for _, other := range x.groups[g] {
				x.addToAll(terms, x.names[other].phrase, int32(fitName/len(terms)))
			}
		}
	}
}

func (x *Index) addToAll(terms []term, text string, fit int32) {
	for i := range terms {
		x.addWord(&terms[i], text, fit)
	}
}

// addTypos adds the entries that differ from the term by one typing error, or
// whose start does if the term may be only the start of a word. Numbers are left
// alone: 12 is no slip of 14.
func (x *Index) addTypos(t *term) {
	if len(t.raw) < typoLetters || hasDigit(t.raw) {
		return
	}
	for e := range x.words {
		text := x.words[e].text
		if text[:1] == numberMark {
			continue
		}
		longer := len(text) - len(t.word)
		if longer >= -2 && longer <= 2 && (oneError(t.word, text) || oneError(t.raw, text)) {
			t.alts = append(t.alts, alt{int32(e), fitTypo})
		} else if t.last && longer > 0 && startError(t.raw, text) {
			t.alts = append(t.alts, alt{int32(e), fitStartTypo})
		}
	}
}

func hasDigit(s string) bool {
	for i := range len(s) {
		if isDigit(rune(s[i])) {
			return true
		}
	}
	return false
}

// startError reports whether a word begins like start but for one typing error.
// The first letter is taken as right: otherwise too much begins alike.
func startError(start, text string) bool {
	if text[0] != start[0] {
		return false
	}
	for n := len(start) - 1; n <= len(start)+1 && n <= len(text); n++ {
		if oneError(start, text[:n]) {
			return true
		}
	}
	return false
}

// entries marks what all terms stand for, so that the words can be found again in
// the text that is shown.
func (x *Index) entries(terms []term) []bool {
	marked := make([]bool, len(x.words))
	for i := range terms {
		for _, a := range terms[i].alts {
			marked[a.entry] = true
		}
	}
	return marked
}
