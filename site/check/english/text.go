package english

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Word is one word, number or unit of a text.
type Word struct {
	*Form
	// Start and End are its bytes in the text.
	Start, End int
	// Break is what stands before it.
	Break Break
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
	r := Reader{Stems: stems}
	return r.Read(source)
}

// A Reader takes many texts apart and keeps their words side by side, which
// costs less than a list of its own for each. One goroutine may use it.
type Reader struct {
	Stems *Stems

	words     []Word
	sentences []Sentence
	texts     []Text
}

// Read takes a text apart.
func (r *Reader) Read(source string) *Text {
	// A word and the space behind it take five bytes or more, nearly always.
	words := room(&r.words, len(source)/5+4)
	sentences := room(&r.sentences, len(source)/80+2)
	scan := scanner{text: source}
	for scan.next() {
		w := Word{Form: r.Stems.of(source[scan.start:scan.end]), Start: scan.start, End: scan.end, Break: scan.pause}
		if w.Break == Full || len(words) == 0 {
			w.Break = Full
			if n := len(sentences); n > 0 {
				sentences[n-1].Last = len(words)
			}
			sentences = append(sentences, Sentence{First: len(words)})
		}
		words = append(words, w)
	}
	if n := len(sentences); n > 0 {
		sentences[n-1].Last = len(words)
	}
	if len(r.texts) == cap(r.texts) {
		r.texts = make([]Text, 0, min(2*cap(r.texts)+1, 64))
	}
	r.texts = append(r.texts, Text{Source: source, Words: kept(&r.words, words), Sentences: kept(&r.sentences, sentences)})
	return &r.texts[len(r.texts)-1]
}

// room gives an empty list with room for n, at the end of a block where it
// has that, else at the start of a new one.
func room[T any](block *[]T, n int) []T {
	if cap(*block)-len(*block) < n {
		const most = 1024
		*block = make([]T, 0, max(n, min(2*cap(*block), most)))
	}
	return (*block)[len(*block):]
}

// kept takes a list into its block, or leaves it where it has outgrown it, and
// gives it without room for more.
func kept[T any](block *[]T, list []T) []T {
	if n := len(*block); cap(list) == cap(*block)-n {
		*block = (*block)[:n+len(list)]
	}
	return list[:len(list):len(list)]
}

// scanner finds the words of a text.
type scanner struct {
	text       string
	at         int
	start, end int
	pause      Break
	number     bool
}

// next finds the next word.
func (r *scanner) next() bool {
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
func (r *scanner) breakAt(c rune, n int) Break {
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
func (r *scanner) take() {
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

// isWordRune reports whether a rune is a letter, a digit, or a sign that is
// part of a unit.
func isWordRune(c rune) bool {
	if c < utf8.RuneSelf {
		return isDigit(c) || c|0x20 >= 'a' && c|0x20 <= 'z'
	}
	return unicode.IsLetter(c) || c == '²' || c == '³' || c == '°'
}
