package finding

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

var excerptTests = []struct {
	name, line, words string // the words are found in the line
	text, carets      string
}{
	{"plain", "abc def", "def", "abc def", "    ^^^"},
	{"tabs keep the columns", "\ta\tbc", "bc", "    a   bc", "        ^^"},
	{"a tab itself", "ab\tc", "\t", "ab  c", "  ^^"},
	{"letters of two bytes", "µΩ 5 V", "5 V", "µΩ 5 V", "   ^^^"},
	{"letters two columns wide", "配線 red", "red", "配線 red", "     ^^^"},
	{"caret under wide letters", "a 配線", "配線", "a 配線", "  ^^^^"},
	{"combining accents take no column", "cafe\u0301 x", "x", "cafe\u0301 x", "     ^"},
	{"byte order mark takes no column", "\ufeff# x", "x", "\ufeff# x", "  ^"},
	{"a direction override rules nothing", "ab \u202edc", "dc", "ab \ufffddc", "    ^^"},
	{"a zero-width space is shown", "ab\u200bdc", "\u200b", "ab\ufffddc", "  ^"},
	{"caret under what takes no column", "cafe\u0301 is here", "\u0301", "cafe\u0301 is here", "    ^"},
	{"an escape rules nothing", "ab \x1b[31mdc", "dc", "ab \ufffd[31mdc", "        ^^"},
	{"emoji", "🔧 x", "x", "🔧 x", "   ^"},
}

func TestExcerpt(t *testing.T) {
	for _, tt := range excerptTests {
		start := strings.Index(tt.line, tt.words)
		text, carets := excerpt(tt.line, start, len(tt.words))
		if text != tt.text || carets != tt.carets {
			t.Errorf("%s:\n%s|\n%s|\nwant\n%s|\n%s|", tt.name, text, carets, tt.text, tt.carets)
		}
	}
}

func TestExcerptEdges(t *testing.T) {
	for _, tt := range []struct {
		name          string
		line          string
		start, length int
		text, carets  string
	}{
		{"a place between bytes", "abc", 1, 0, "abc", " ^"},
		{"at the line's end", "abc", 3, 0, "abc", "   ^"},
		{"words that run into the next line", "abc", 1, 50, "abc", " ^^"},
		{"beyond the line", "abc", 9, 2, "abc", "   ^"},
		{"inside a letter", "aµb", 2, 1, "aµb", " ^"},
		{"empty line", "", 0, 0, "", "^"},
		{"no column", "abc", -1, 1, "abc", "^"},
		{"only a combining accent", "e\u0301", 1, 2, "e\u0301", " ^"},
		{"bytes that are no text", "a\xff\xfeb", 1, 2, "a\ufffd\ufffdb", " ^^"},
	} {
		text, carets := excerpt(tt.line, tt.start, tt.length)
		if text != tt.text || carets != tt.carets {
			t.Errorf("%s: %q %q, want %q %q", tt.name, text, carets, tt.text, tt.carets)
		}
	}
}

func TestExcerptOfALongLine(t *testing.T) {
	line := strings.Repeat("before ", 40) + "WORDS" + strings.Repeat(" after", 40)
	start := strings.Index(line, "WORDS")
	for _, tt := range []struct {
		name      string
		line      string
		cutBefore bool
		cutAfter  bool
	}{
		{"in the middle", line, true, true},
		{"near the start", line[start-7:], false, true},
		{"near the end", line[:start+11], true, false},
	} {
		at := strings.Index(tt.line, "WORDS")
		text, carets := excerpt(tt.line, at, 5)
		column := utf8.RuneCountInString(carets) - 5
		runes := []rune(text)
		if string(runes[column:column+5]) != "WORDS" || strings.TrimSpace(carets) != "^^^^^" {
			t.Errorf("%s: carets are not under the words:\n%s\n%s", tt.name, text, carets)
		}
		if n := len(runes); n > excerptWidth+2 || n < excerptWidth-8 {
			t.Errorf("%s: %d columns shown", tt.name, n)
		}
		if strings.HasPrefix(text, "…") != tt.cutBefore || strings.HasSuffix(text, "…") != tt.cutAfter {
			t.Errorf("%s: ellipsis wrong: %s", tt.name, text)
		}
	}
	if _, carets := excerpt(line, 0, len(line)); len(carets) != excerptWidth {
		t.Errorf("words longer than the excerpt: %d carets, want %d", len(carets), excerptWidth)
	}
}

// FuzzExcerpt checks that an excerpt is one line of text, marks something, and
// never marks beyond the line.
func FuzzExcerpt(f *testing.F) {
	for _, tt := range excerptTests {
		f.Add(tt.line, strings.Index(tt.line, tt.words), len(tt.words))
	}
	f.Add(strings.Repeat("x", 300), 250, 10)
	f.Add("\n", 3, 2)
	f.Fuzz(func(t *testing.T, line string, start, length int) {
		text, carets := excerpt(line, start, length)
		if !utf8.ValidString(text) || strings.ContainsFunc(text, unicode.IsControl) {
			t.Fatalf("text %q", text)
		}
		marks := strings.TrimLeft(carets, " ")
		if marks == "" || strings.Trim(marks, "^") != "" {
			t.Fatalf("carets %q", carets)
		}
		if len(carets) > excerptWidth+2 {
			t.Fatalf("carets to column %d", len(carets))
		}
	})
}

// TestExcerptOfAVeryLongLine checks that the words stand over their carets
// wherever they are in a line of which only a part is laid out.
func TestExcerptOfAVeryLongLine(t *testing.T) {
	line := strings.Repeat("ä b ", 3000)
	for _, at := range []int{0, 4096, 5000, len(line) - 10} {
		for !strings.HasPrefix(line[at:], "b ") {
			at++
		}
		text, carets := excerpt(line, at, 1)
		column := strings.Index(carets, "^")
		if column < 0 || []rune(text)[column] != 'b' {
			t.Errorf("at %d: %q over %q", at, text, carets)
		}
	}
}
