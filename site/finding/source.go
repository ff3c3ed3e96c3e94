package finding

import (
	"bytes"
	"slices"
	"strconv"
	"sync"
)

// Position is a place in a file. Line and Column count from 1, Column in bytes;
// 0 means that they are not known, as for a finding about a whole file.
type Position struct {
	File   string
	Offset int // bytes from the start of the file
	Line   int
	Column int
}

// String gives the forms that editors and terminals turn into a link:
//
//	file:line:column    all known
//	file:line           column not known
//	file                line not known
//	line:column         file not known
//	                    nothing known: the empty string
func (p Position) String() string {
	s := p.File
	if p.Line > 0 {
		if s != "" {
			s += ":"
		}
		s += strconv.Itoa(p.Line)
		if p.Column > 0 {
			s += ":" + strconv.Itoa(p.Column)
		}
	}
	return s
}

// Source is the text of one file, and knows which line each byte is on. It may
// be used from several goroutines. The text must not be changed.
type Source struct {
	file  string
	text  []byte
	once  sync.Once
	lines []int // offset at which each line starts
}

// NewSource keeps the text, not a copy. The file name is shown as it is given;
// writers expect it relative, with forward slashes.
func NewSource(file string, text []byte) *Source {
	return &Source{file: file, text: text}
}

// File gives the name that the source was made with.
func (s *Source) File() string { return s.file }

// Text gives the whole text. It is shared: read it only.
func (s *Source) Text() []byte { return s.text }

// Position says which line and column a byte offset is at. An offset outside the
// text is taken as its nearest end.
func (s *Source) Position(offset int) Position {
	s.once.Do(s.index)
	offset = min(max(offset, 0), len(s.text))
	i, exact := slices.BinarySearch(s.lines, offset)
	if !exact {
		i--
	}
	return Position{File: s.file, Offset: offset, Line: i + 1, Column: offset - s.lines[i] + 1}
}

// LineText gives the text of a line counted from 1, without its line end (LF or
// CR LF). A line that does not exist is empty.
func (s *Source) LineText(line int) string {
	s.once.Do(s.index)
	if line < 1 || line > len(s.lines) {
		return ""
	}
	end := len(s.text)
	if line < len(s.lines) {
		end = s.lines[line] - 1
	}
	return string(bytes.TrimSuffix(s.text[s.lines[line-1]:end], []byte("\r")))
}

// At begins a finding about the bytes from start up to end: place, length, words
// and line are filled in, the rest is the rule's to say. Offsets outside the text
// are taken as its nearest end.
func (s *Source) At(start, end int) Finding {
	start = min(max(start, 0), len(s.text))
	end = min(max(end, start), len(s.text))
	pos := s.Position(start)
	return Finding{
		Pos:    pos,
		Length: end - start,
		Found:  string(s.text[start:end]),
		Line:   s.LineText(pos.Line),
	}
}

func (s *Source) index() {
	s.lines = append(make([]int, 0, bytes.Count(s.text, []byte("\n"))+1), 0)
	for i, c := range s.text {
		if c == '\n' {
			s.lines = append(s.lines, i+1)
		}
	}
}
