package find

import "unicode/utf8"

// scanner takes a text apart into words: runs of letters and digits, without case
// and accents. A point between digits belongs to the word (3.3), an apostrophe is
// left out (maker's), a unit is parted from its number (14AWG, 12 V), a number
// after letters is not (M6).
type scanner struct {
	text       string
	at         int
	word       []byte // the word, folded; good until the next call
	start, end int    // where it stands in the text
	hyphen     bool   // only a hyphen stands between it and the word before
}

// next finds the next word and reports whether there was one.
func (s *scanner) next() bool {
	s.word = s.word[:0]
	from, before := s.at, s.end
	for from < len(s.text) {
		r, size := decode(s.text[from:])
		if isWord(r) {
			break
		}
		from += size
	}
	s.start = from
	between := s.text[before:from]
	s.hyphen = before > 0 && (between == "-" || between == "\u2011")
	for s.at = from; s.at < len(s.text); {
		r, size := decode(s.text[s.at:])
		if !s.takes(r, s.at+size) {
			break
		}
		s.word = appendFolded(s.word, r)
		s.at += size
	}
	s.end = s.at
	return len(s.word) > 0
}

// takes reports whether the rune before byte after goes on with the word.
func (s *scanner) takes(r rune, after int) bool {
	n := len(s.word)
	if r == '.' {
		return n > 0 && isDigit(rune(s.word[n-1])) && after < len(s.text) && isDigit(rune(s.text[after]))
	}
	if r == '\'' || r == '’' {
		if n == 0 || after >= len(s.text) {
			return false
		}
		next, _ := decode(s.text[after:])
		return isLetter(next)
	}
	if n > 0 && isDigit(rune(s.word[0])) && isDigit(rune(s.word[n-1])) && isLetter(r) {
		return false
	}
	return isWord(r) || n > 0 && isMark(r)
}

func decode(s string) (rune, int) {
	if s[0] < utf8.RuneSelf {
		return rune(s[0]), 1
	}
	return utf8.DecodeRuneInString(s)
}

// appendFolded adds a rune in the form that is compared.
func appendFolded(b []byte, r rune) []byte {
	if r < utf8.RuneSelf {
		if r >= 'A' && r <= 'Z' {
			r |= 0x20
		}
		if isWord(r) || r == '.' {
			return append(b, byte(r))
		}
		return b // an apostrophe
	}
	if isMark(r) || r == '’' {
		return b
	}
	for i := range folds {
		for _, accented := range folds[i][1] {
			if accented == r {
				return append(b, folds[i][0]...)
			}
		}
	}
	return utf8.AppendRune(b, lower(r))
}

// phraseOf gives the words of a phrase that are searched for, singular, with a
// space between them.
func phraseOf(text string) string {
	var b []byte
	s := scanner{text: text}
	for s.next() {
		if isStop(string(s.word)) {
			continue
		}
		word := singular(string(s.word))
		if len(b) > 0 {
			b = append(b, ' ')
		}
		b = append(b, word...)
	}
	return string(b)
}

// joinedOf gives the words of a text as one, such as gr02 for GR-02.
func joinedOf(text string) string {
	var b []byte
	s := scanner{text: text}
	for s.next() {
		b = append(b, s.word...)
	}
	return string(b)
}
