package phrase

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Word is one word, number or unit of a text.
type Word struct {
	// Text is the word as it stands, Lower the same in small letters.
	Text, Lower string
	// Stem is what the word shares with its other forms.
	Stem string
	// Start and End are its bytes in the text.
	Start, End int
	// Break is what stands before it.
	Break Break
	// Number is true for a number in digits.
	Number bool

	id     int32 // of the stem
	counts bool  // a number in letters
}

// A Break is how strongly a word is set off from the one before it.
type Break uint8

const (
	NoBreak Break = iota
	Hyphen        // self-tapping
	Comma
	Clause // semicolon, colon, dash, bracket
	Full   // the start of a sentence
)

// A Sentence is a stretch of a text's words, First up to Last.
type Sentence struct{ First, Last int }

// A Text is running text taken apart.
type Text struct {
	Source    string
	Words     []Word
	Sentences []Sentence
}

// Words of the text within a sentence.
func (t *Text) In(s Sentence) []Word { return t.Words[s.First:s.Last] }

// String is the sentence as it stands, its closing mark left out.
func (t *Text) String(s Sentence) string {
	if s.First == s.Last {
		return ""
	}
	return t.Source[t.Words[s.First].Start:t.Words[s.Last-1].End]
}

// Read takes a text apart into words and sentences.
func Read(source string, stems *Stems) *Text {
	t := &Text{Source: source, Words: make([]Word, 0, len(source)/5)}
	r := reader{text: source}
	for r.next() {
		w := Word{Text: source[r.start:r.end], Start: r.start, End: r.end, Break: r.pause, Number: r.number}
		k := stems.of(w.Text, r.number)
		w.Lower, w.Stem, w.id, w.counts = k.lower, k.stem, k.id, k.counts
		if w.Break == Full || len(t.Words) == 0 {
			w.Break = Full
			if n := len(t.Sentences); n > 0 {
				t.Sentences[n-1].Last = len(t.Words)
			}
			t.Sentences = append(t.Sentences, Sentence{First: len(t.Words)})
		}
		t.Words = append(t.Words, w)
	}
	if n := len(t.Sentences); n > 0 {
		t.Sentences[n-1].Last = len(t.Words)
	}
	return t
}

// reader takes a text apart word by word.
type reader struct {
	text       string
	at         int
	start, end int
	pause      Break
	number     bool
}

// next finds the next word.
func (r *reader) next() bool {
	r.pause = NoBreak
	if r.end > 0 && r.end == r.at {
		r.pause = NoBreak
	}
	for r.at < len(r.text) {
		c, n := utf8.DecodeRuneInString(r.text[r.at:])
		if isWordRune(c) || c == '%' {
			break
		}
		r.pause = max(r.pause, r.breakAt(c, n))
		r.at += n
	}
	if r.at >= len(r.text) {
		return false
	}
	r.start = r.at
	r.take()
	r.end = r.at
	return true
}

// breakAt is how strongly a mark sets words apart. A full stop does so where a
// space and no small letter follows: "e.g. this" and "3.3" go on.
func (r *reader) breakAt(c rune, n int) Break {
	switch c {
	case '.', '!', '?', '…':
		rest := r.text[r.at+n:]
		if c == '.' && !endsSentence(rest) {
			return NoBreak
		}
		return Full
	case '\n':
		return Full
	case ';', ':', '(', ')', '–', '—', '[', ']':
		return Clause
	case ',':
		return Comma
	case '-', '\u2011':
		return Hyphen
	}
	return NoBreak
}

// endsSentence reports whether a full stop before rest ends a sentence.
func endsSentence(rest string) bool {
	trimmed := strings.TrimLeft(rest, "\"”’)*_")
	if trimmed == "" || trimmed[0] == '\n' {
		return true
	}
	if trimmed[0] != ' ' {
		return false
	}
	c, _ := utf8.DecodeRuneInString(strings.TrimLeft(trimmed, " \"“‘*_(["))
	return !unicode.IsLower(c)
}

// take reads one word: letters and digits. A number ends where letters begin
// (14AWG, 12V), a point within a number belongs to it, an apostrophe and what
// follows it (maker's) does not count but is passed over.
func (r *reader) take() {
	first, _ := utf8.DecodeRuneInString(r.text[r.at:])
	if first == '%' {
		r.at, r.number = r.at+1, false
		return
	}
	r.number = isDigit(first)
	for r.at < len(r.text) {
		c, n := utf8.DecodeRuneInString(r.text[r.at:])
		switch {
		case r.number && c == '.' && r.at+1 < len(r.text) && isDigit(rune(r.text[r.at+1])):
		case r.number && !isDigit(c):
			return
		case !isWordRune(c) && !(c == '·' && !r.number):
			return
		}
		r.at += n
	}
}

func isDigit(c rune) bool { return c >= '0' && c <= '9' }

// isWordRune reports a letter or digit, or a sign that is part of a unit.
func isWordRune(c rune) bool {
	if c < utf8.RuneSelf {
		return isDigit(c) || c|0x20 >= 'a' && c|0x20 <= 'z'
	}
	return unicode.IsLetter(c) || c == '²' || c == '³' || c == '°'
}
