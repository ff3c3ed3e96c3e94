package finding

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/width"
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

// runeWidth gives the terminal columns of a rune that is no control character:
// 0 for one that combines with the rune before it, 2 for the wide and the
// full-width runes of Unicode Standard Annex #11, otherwise 1.
func runeWidth(r rune) int {
	if unicode.In(r, unicode.Mn, unicode.Me, unicode.Cf) {
		return 0
	}
	switch width.LookupRune(r).Kind() {
	case width.EastAsianWide, width.EastAsianFullwidth:
		return 2
	default:
		return 1
	}
}
