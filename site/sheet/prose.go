package sheet

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

// Prose is the words of a part of a sheet, markup taken off, every byte with
// its place in the file.
type Prose struct {
	Text string
	// At[i] is the place of Text[i] in the file.
	At []int
}

// Span is the place in the file of a stretch of the text.
func (p Prose) Span(start, end int) Span {
	if len(p.At) == 0 || start >= len(p.At) {
		return Span{}
	}
	if end <= start {
		return Span{p.At[start], p.At[start]}
	}
	return Span{p.At[start], p.At[end-1] + 1}
}

// Prose collects the words of a node and all in it. Blocks are set apart by a
// line break. Where skip is not nil, nodes for which it is true are left out.
func (s *Sheet) Prose(n ast.Node, skip func(ast.Node) bool) Prose {
	c := collector{src: s.Source.Text(), skip: skip}
	c.collect(n)
	return Prose{Text: c.text.String(), At: c.at}
}

type collector struct {
	src  []byte
	skip func(ast.Node) bool
	text strings.Builder
	at   []int
}

func (c *collector) add(s string, at int) {
	c.text.WriteString(s)
	for i := range len(s) {
		c.at = append(c.at, at+i)
	}
}

// gap sets blocks apart, at the place of the last byte.
func (c *collector) gap(sep string) {
	if len(c.at) > 0 && !strings.HasSuffix(c.text.String(), "\n") {
		at := c.at[len(c.at)-1]
		c.text.WriteString(sep)
		c.at = append(c.at, at)
	}
}

func (c *collector) collect(n ast.Node) {
	if c.skip != nil && c.skip(n) {
		return
	}
	switch n := n.(type) {
	case *ast.Text:
		c.add(string(n.Segment.Value(c.src)), n.Segment.Start)
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
	c := collector{src: sh.src}
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
	case *Figure:
		return n.Span.Start, n.Span.End
	case *Fence:
		return n.Span.Start, n.Span.End
	case *Message:
		return n.Span.Start, n.Span.End
	case *Live:
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
