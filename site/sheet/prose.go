package sheet

import (
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"
)

// Prose is the words of a part of a sheet, markup taken off, with the place of
// each in the file.
type Prose struct {
	Text string
	runs []run
}

// A run is a stretch of prose that stands in one piece in the file: from byte
// text of the prose, and from byte file of the file. A run that is fixed is
// there in the prose alone, and all of it has the one place.
type run struct {
	text, file int32
	fixed      bool
}

// At is the place in the file of a byte of the text.
func (p Prose) At(i int) int {
	k, exact := slices.BinarySearchFunc(p.runs, int32(i), func(r run, at int32) int { return int(r.text) - int(at) })
	if !exact {
		k--
	}
	switch {
	case k < 0:
		return 0
	case p.runs[k].fixed:
		return int(p.runs[k].file)
	}
	return int(p.runs[k].file) + i - int(p.runs[k].text)
}

// Span is the place in the file of a stretch of the text.
func (p Prose) Span(start, end int) Span {
	if start >= len(p.Text) {
		return Span{}
	}
	if end <= start {
		return Span{p.At(start), p.At(start)}
	}
	return Span{p.At(start), p.At(end-1) + 1}
}

// Prose collects the words of a node and all in it. Blocks are set apart by a
// line break. Where skip is not nil, nodes for which it is true are left out.
func (s *Sheet) Prose(n ast.Node, skip func(ast.Node) bool) Prose {
	c := collector{src: s.Source.Text(), skip: skip}
	c.collect(n)
	return Prose{Text: c.text.String(), runs: c.runs}
}

type collector struct {
	// resolve reads escapes and entities, whose places in the file are then no
	// longer those of the text's bytes.
	resolve bool
	src     []byte
	skip    func(ast.Node) bool
	text    strings.Builder
	runs    []run
}

// add takes in words that stand at a place of the file.
func (c *collector) add(s string, at int) {
	if s == "" {
		return
	}
	n := c.text.Len()
	if k := len(c.runs); k == 0 || c.runs[k-1].fixed || int(c.runs[k-1].file)+n-int(c.runs[k-1].text) != at {
		c.runs = append(c.runs, run{text: int32(n), file: int32(at)})
	}
	c.text.WriteString(s)
}

// gap sets blocks apart, at the place of the last byte.
func (c *collector) gap(sep string) {
	n := c.text.Len()
	if n == 0 || c.text.String()[n-1] == '\n' {
		return
	}
	last := Prose{Text: c.text.String(), runs: c.runs}.At(n - 1)
	c.runs = append(c.runs, run{text: int32(n), file: int32(last), fixed: true})
	c.text.WriteString(sep)
}

func (c *collector) collect(n ast.Node) {
	if c.skip != nil && c.skip(n) {
		return
	}
	switch n := n.(type) {
	case *ast.Text:
		words := n.Segment.Value(c.src)
		if c.resolve && !n.IsRaw() {
			words = util.ResolveNumericReferences(util.ResolveEntityNames(util.UnescapePunctuations(words)))
		}
		c.add(string(words), n.Segment.Start)
		if n.SoftLineBreak() || n.HardLineBreak() {
			c.gap(" ")
		}
		return
	case *ast.AutoLink:
		c.add(string(n.Label(c.src)), n.Pos())
		return
	case *Value:
		c.add(n.Words, n.Span.Start)
		return
	case *LimitLink:
		c.add(n.Words, n.Span.Start)
		return
	case *Reading:
		c.add(n.Words, n.Span.Start)
		return
	case *Fence:
		return
	case *Figure:
		c.gap("\n")
		c.add(n.Caption, n.Span.Start)
		c.gap("\n")
		return
	}
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		c.collect(child)
	}
	if n.Type() == ast.TypeBlock {
		c.gap("\n")
	}
}

// plain is the words of a node.
func (sh *shaping) plain(n ast.Node) string {
	c := collector{src: sh.src, resolve: true}
	for child := n.FirstChild(); child != nil; child = child.NextSibling() {
		c.collect(child)
	}
	return strings.TrimSpace(c.text.String())
}

// inside is the stretch between a link's or emphasis's own marks.
func (sh *shaping) inside(n ast.Node) Span {
	first, last := -1, -1
	ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if t, ok := c.(*ast.Text); ok && entering {
			if first < 0 {
				first = t.Segment.Start
			}
			last = t.Segment.Stop
		}
		return ast.WalkContinue, nil
	})
	if first < 0 {
		return Span{n.Pos(), n.Pos()}
	}
	return Span{first, last}
}

// linkSpan is the whole of a link or picture, from its first bracket to its
// closing one.
func (sh *shaping) linkSpan(n ast.Node) Span {
	start, from := n.Pos(), sh.inside(n).End
	depth := 0
	for i := from; i < len(sh.src); i++ {
		switch sh.src[i] {
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return Span{start, i + 1}
			}
		case '\n':
			if depth == 0 { // a reference link ends with its brackets
				return Span{start, i}
			}
		}
	}
	return Span{start, max(start, from)}
}

// spanOf is the stretch of the file that a node's words take.
func (sh *shaping) spanOf(n ast.Node) Span {
	first, last := -1, -1
	ast.Walk(n, func(c ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		a, b := own(c)
		if a >= 0 && (first < 0 || a < first) {
			first = a
		}
		last = max(last, b)
		return ast.WalkContinue, nil
	})
	if first < 0 {
		p := max(0, n.Pos())
		return Span{p, p}
	}
	return Span{first, last}
}

// own is the stretch of the file that a node itself takes, -1 where none.
func own(n ast.Node) (int, int) {
	switch n := n.(type) {
	case *ast.Text:
		return n.Segment.Start, n.Segment.Stop
	case *ast.RawHTML:
		if n.Segments.Len() > 0 {
			return n.Segments.At(0).Start, n.Segments.At(n.Segments.Len() - 1).Stop
		}
	case *Value:
		return n.Link.Start, n.Link.End
	case *Reading:
		return n.Link.Start, n.Link.End
	case *LimitLink:
		return n.Link.Start, n.Link.End
	case *Figure:
		return n.Span.Start, n.Span.End
	case *Fence:
		return n.Span.Start, n.Span.End
	case *Message:
		return n.Span.Start, n.Span.End
	case *EmbeddedCalculator:
		return n.Link.Start, n.Link.End
	case *Table:
		return n.Link.Start, n.Link.End
	case *Problem:
		return n.Link.Start, n.Link.End
	}
	if n.Type() == ast.TypeBlock {
		if l := n.Lines(); l != nil && l.Len() > 0 {
			return l.At(0).Start, l.At(l.Len() - 1).Stop
		}
	}
	return -1, -1
}
