package sheet

import (
	"bytes"
	"fmt"
	"path"
	"strings"
	"unicode/utf8"

	"baybook/calculators/calc"
	"baybook/site/finding"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// A Reader turns files into sheets. One Reader serves any number of
// goroutines.
type Reader struct {
	markdown goldmark.Markdown
	named    func(name string) *calc.Calculator
	names    []string
	// limits is the register that limit: links name; nil where there is none.
	limits *LimitRegister
}

// NewReader makes a reader that resolves calc: links with the calculators
// given.
func NewReader(calculators []*calc.Calculator) *Reader {
	r := &Reader{named: func(name string) *calc.Calculator {
		for _, c := range calculators {
			if c.Name == name {
				return c
			}
		}
		return nil
	}}
	for _, c := range calculators {
		r.names = append(r.names, c.Name)
	}
	r.markdown = goldmark.New(
		goldmark.WithExtensions(extension.Table, extension.TaskList),
		goldmark.WithParserOptions(parser.WithASTTransformers(util.Prioritized(transformer{}, 0))),
	)
	return r
}

// Limits on a file, far above what a person writes and far below what would
// make the builder sweat.
const (
	mostBytes   = 1 << 20
	longestLine = 20_000
	deepestNest = 24
	mostColumns = 40
)

// Parse reads one file. The findings say everything that is wrong with it as
// a file; the sheet is never nil, but not to be published where there is an
// error among them.
func (r *Reader) Parse(file string, content []byte) (*Sheet, finding.List) {
	var list finding.List
	src := finding.NewSource(file, content)
	s := &Sheet{File: file, Path: strings.TrimSuffix(file, path.Ext(file)), Source: src}
	report := func(f finding.Finding) { list = append(list, f) }
	if !readable(src, report) {
		return s, list
	}
	front, body := splitFront(src.Text())
	if front == (Span{}) {
		f := src.At(0, 0)
		f.Rule, f.Message = "front-matter", "the sheet has no front matter"
		f.Do = "start the file with a line ---, then key: value lines, then a line ---"
		report(f)
	} else {
		s.Front = readFront(src, front, report)
	}
	context := parser.NewContext()
	context.Set(shapingKey, &shaping{reader: r, sheet: s, report: report})
	s.Root = r.markdown.Parser().Parse(from(src.Text(), body), parser.WithContext(context))
	return s, list
}

// readable refuses what cannot be a sheet: bytes that are not UTF-8, files,
// lines and nesting that no person writes, characters that hide.
func readable(src *finding.Source, report func(finding.Finding)) bool {
	content := src.Text()
	refuse := func(at, end int, rule, message, do string) bool {
		f := src.At(at, end)
		f.Rule, f.Message, f.Do = rule, message, do
		report(f)
		return false
	}
	if len(content) > mostBytes {
		return refuse(0, 0, "file-size", fmt.Sprintf("the file has more than the %d bytes that a sheet may have", mostBytes), "split it into several sheets")
	}
	for at := 0; at < len(content); {
		if c := content[at]; c >= ' ' && c < 0x7F || c == '\n' { // nearly every byte
			at++
			continue
		}
		c, n := utf8.DecodeRune(content[at:])
		if c == utf8.RuneError && n == 1 {
			return refuse(at, at+1, "utf8", fmt.Sprintf("byte %#02x is not UTF-8 text", content[at]), "save the file as UTF-8")
		}
		if finding.Hides(c) && !(c == 0xFEFF && at == 0) {
			return refuse(at, at+n, "hidden-character", fmt.Sprintf("the character U+%04X cannot be seen and can make the text read differently", c), "delete it")
		}
		at += n
	}
	at := 0
	for line := range bytes.Lines(content) {
		if len(line) > longestLine {
			return refuse(at, at+1, "file-size", fmt.Sprintf("the line has %d bytes; at most %d are read", len(line), longestLine), "break the line")
		}
		if nesting(line) > deepestNest {
			return refuse(at, at+1, "nesting", fmt.Sprintf("the line is nested more than %d deep", deepestNest), "write it flatter")
		}
		if columns(line) > mostColumns {
			return refuse(at, at+1, "table-size", fmt.Sprintf("the table has more than %d columns", mostColumns), "make several tables of it, or turn it round")
		}
		at += len(line)
	}
	return true
}

// columns counts the columns of a table in the row of hyphens below its
// header, 0 in any other line. Every shorter row is filled up to as many, so
// that a wide header over many short rows would fill the memory.
func columns(line []byte) int {
	hyphens := false
	for _, c := range line {
		switch c {
		case '-':
			hyphens = true
		case '|', ':', ' ', '\t', '\r', '\n', '>':
		default:
			return 0
		}
	}
	if !hyphens {
		return 0
	}
	return bytes.Count(line, []byte("|"))
}

// nesting estimates how deep a line opens block quotes and lists, or
// brackets within brackets.
func nesting(line []byte) int {
	quotes, open, most := 0, 0, 0
	leading := true
	for i, c := range line {
		switch c {
		case '>':
			if leading {
				quotes++
			}
		case '-', '*', '+':
			if leading && i+1 < len(line) && line[i+1] == ' ' {
				quotes++
			} else {
				leading = false
			}
		case ' ', '\t':
		case '[', '!':
			leading = false
			if c == '[' {
				open++
				most = max(most, open)
			}
		case ']':
			open = max(0, open-1)
		case '.', ')':
			if leading && i+1 < len(line) && line[i+1] == ' ' {
				quotes++ // 1. or 1)
			} else {
				leading = false
			}
		default:
			leading = leading && c >= '0' && c <= '9'
		}
	}
	indent := len(line) - len(bytes.TrimLeft(line, " \t"))
	return max(quotes, most, indent/4)
}

// splitFront finds the YAML between the first line, ---, and the next such
// line, and where the body starts. A byte order mark may stand in front.
func splitFront(content []byte) (front Span, body int) {
	at := len(content) - len(bytes.TrimPrefix(content, []byte("\ufeff")))
	first, rest, ok := bytes.Cut(content[at:], []byte("\n"))
	if !ok || string(bytes.TrimRight(first, " \r")) != "---" {
		return Span{}, at
	}
	start := len(content) - len(rest)
	for next := start; next < len(content); {
		line, _, more := bytes.Cut(content[next:], []byte("\n"))
		end := next + len(line)
		if more {
			end++
		}
		if string(bytes.TrimRight(line, " \r")) == "---" {
			return Span{start, next}, end
		}
		next = end
	}
	return Span{}, at
}

// from reads a file behind its front matter, so that every place in the tree is
// a place in the file.
func from(content []byte, body int) text.Reader {
	r := text.NewReader(content)
	r.SetPosition(-1, text.NewSegment(body, body))
	r.AdvanceLine()
	return r
}
