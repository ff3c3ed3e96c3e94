package finding

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

const (
	tabStop      = 4  // columns
	excerptWidth = 96 // columns of source shown of a long line
	excerptLead  = 24 // columns kept before the words when the line's start is cut
)

// cell is what a terminal shows for one rune of a line.
type cell struct {
	at    int // byte offset in the line
	text  string
	width int // terminal columns: 0, 1, 2, or what is left to the tab stop
}

// excerpt gives a line as a terminal shows it, and a line of carets that stand
// under the length bytes that begin at byte start. A long line is cut around the
// words, an ellipsis at each cut. There is at least one caret, after the line's
// end if the words are there, and none beyond the line.
func excerpt(line string, start, length int) (text, carets string) {
	line, start = around(line, max(start, 0))
	cells := lay(line)
	first, last := span(cells, len(line), start, length)
	lo, hi := window(cells, first)
	var t, c strings.Builder
	if lo > 0 {
		t.WriteString("…")
		c.WriteByte(' ')
	}
	marked, column := 0, -1
	for i := lo; i < hi; i++ {
		if i == first {
			column = c.Len()
		}
		t.WriteString(cells[i].text)
		mark := " "
		if i >= first && i < last {
			mark = "^"
			marked += cells[i].width
		}
		c.WriteString(strings.Repeat(mark, cells[i].width))
	}
	if hi < len(cells) {
		t.WriteString("…")
	}
	marks := c.String()
	if marked == 0 { // the words take no column
		if column >= 0 {
			marks = marks[:column]
		}
		marks += "^"
	}
	return strings.TrimRight(t.String(), " "), strings.TrimRight(marks, " ")
}

// around cuts a very long line down to the bytes around a place, of which an
// excerpt shows a part: a thousand findings on one line would else lay it out a
// thousand times.
func around(line string, at int) (string, int) {
	const side = 2048 // bytes, many times what is shown
	from, to := at-side, at+side
	for from > 0 && !utf8.RuneStart(line[min(from, len(line)-1)]) {
		from--
	}
	for to < len(line) && !utf8.RuneStart(line[to]) {
		to++
	}
	from = min(max(from, 0), len(line))
	return line[from:min(to, len(line))], at - from
}

// lay splits a line into cells.
func lay(line string) []cell {
	cells := make([]cell, 0, len(line))
	column := 0
	for i := 0; i < len(line); {
		r, size := utf8.DecodeRuneInString(line[i:])
		c := cell{at: i, text: string(r), width: runeWidth(r)}
		if r == '\t' {
			c.width = tabStop - column%tabStop
			c.text = strings.Repeat(" ", c.width)
		} else if unicode.IsControl(r) || Hides(r) && r != 0xFEFF { // it would rule the terminal, or not be seen
			c.text, c.width = string(unicode.ReplacementChar), 1
		}
		cells = append(cells, c)
		column += c.width
		i += size
	}
	return cells
}

// span finds the cells of the bytes from start on, in a line of size bytes: the
// first and one past the last.
func span(cells []cell, size, start, length int) (first, last int) {
	if start >= size {
		return len(cells), len(cells)
	}
	for i := range cells {
		if cells[i].at <= start {
			first = i
		}
	}
	last = first
	for last < len(cells) && cells[last].at < start+length {
		last++
	}
	return first, max(last, first+1)
}

// window chooses which cells of a line are shown.
func window(cells []cell, first int) (lo, hi int) {
	total := 0
	for i := range cells {
		total += cells[i].width
	}
	if total <= excerptWidth {
		return 0, len(cells)
	}
	lo = first
	for width := 0; lo > 0 && width < excerptLead; lo-- {
		width += cells[lo-1].width
	}
	hi = lo
	width := 0
	for hi < len(cells) && width+cells[hi].width <= excerptWidth {
		width += cells[hi].width
		hi++
	}
	for hi == len(cells) && lo > 0 && width+cells[lo-1].width <= excerptWidth {
		lo--
		width += cells[lo].width
	}
	return lo, hi
}

// wide lists the ranges that terminals show two columns wide: the main blocks of
// width W and F in Unicode Standard Annex #11 and the emoji blocks.
var wide = &unicode.RangeTable{
	R16: []unicode.Range16{
		{Lo: 0x1100, Hi: 0x115F, Stride: 1}, // Hangul Jamo, leading
		{Lo: 0x2E80, Hi: 0x303E, Stride: 1}, // CJK radicals and punctuation
		{Lo: 0x3041, Hi: 0xA4CF, Stride: 1}, // kana to Yi
		{Lo: 0xA960, Hi: 0xA97F, Stride: 1}, // Hangul Jamo extended A
		{Lo: 0xAC00, Hi: 0xD7A3, Stride: 1}, // Hangul syllables
		{Lo: 0xF900, Hi: 0xFAFF, Stride: 1}, // CJK compatibility ideographs
		{Lo: 0xFE30, Hi: 0xFE6F, Stride: 1}, // CJK compatibility forms
		{Lo: 0xFF00, Hi: 0xFF60, Stride: 1}, // fullwidth forms
		{Lo: 0xFFE0, Hi: 0xFFE6, Stride: 1}, // fullwidth signs
	},
	R32: []unicode.Range32{
		{Lo: 0x1F300, Hi: 0x1F64F, Stride: 1}, // pictographs, emoticons
		{Lo: 0x1F680, Hi: 0x1F6FF, Stride: 1}, // transport
		{Lo: 0x1F900, Hi: 0x1F9FF, Stride: 1}, // supplemental pictographs
		{Lo: 0x20000, Hi: 0x3FFFD, Stride: 1}, // CJK extensions
	},
}

// runeWidth gives the terminal columns of a rune that is no control character.
func runeWidth(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0 // combining marks, joiners, byte order mark
	}
	if unicode.Is(wide, r) {
		return 2
	}
	return 1
}
