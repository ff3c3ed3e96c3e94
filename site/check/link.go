package check

import (
	"path"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

var link = &Rule{
	Name: "link",
	Firm: true,
	Doc: `A link within the book leads to a sheet or a file that is there

Links are relative to the sheet's own file, as every Markdown viewer follows
them: [text](../area/file.md). None leads out of the content folder.

Bad:

	## Steps

	1. Read [the missing sheet](missing.md).

Good:

	## Steps

	1. Read [the other sheet](other.md).
`,
	Check: func(p *Pass) {
		for _, l := range p.Sheet.Links {
			p.insideLink(l)
		}
	},
}

// insideLink checks a link that stays in the book.
func (p *Pass) insideLink(l *sheet.Link) {
	t := p.Sheet.Resolve(l.Dest)
	switch {
	case t.Outside:
		return
	case l.Dest == "":
		p.Report(l.Span, "the link leads nowhere", "put the path of a sheet between its brackets")
	case strings.HasPrefix(l.Dest, "/") || strings.HasPrefix(t.File, "../") || t.File == ".." || strings.Contains(l.Dest, `\`) || strings.Contains(strings.ToLower(l.Dest), "%2e%2e"):
		p.Report(l.Span, "the link leads out of the content folder", "write a path relative to this sheet, such as ../area/file.md")
	case path.Ext(t.File) == ".md":
		if p.Book.Sheet(strings.TrimSuffix(t.File, ".md")) == nil {
			p.Report(l.Span, "there is no sheet "+t.File, p.nearSheet(t.File))
		}
	case p.Book.Files[t.File] == nil:
		p.Report(l.Span, "there is no file "+t.File, "link to a sheet (.md), or put the file into the content folder")
	}
}

// nearSheet suggests the sheet that a broken link may have meant.
func (p *Pass) nearSheet(file string) string {
	var known []string
	for _, s := range p.Book.Sheets {
		known = append(known, s.File)
		if path.Base(s.File) == path.Base(file) {
			return "did you mean " + s.File + "?"
		}
	}
	if near := calc.Nearest(file, known); near != "" {
		return "did you mean " + near + "?"
	}
	return "correct the path, or write that sheet"
}

var linkForm = &Rule{
	Name: "link-form",
	Firm: true,
	Doc: `A link is written so that Markdown reads it as one

A space in the address, or a bracket too few, leaves the link's source standing
in the text, and the number in it unchecked. Write a space in a query as %20, or
leave it out.

Bad:

	## Steps

	1. Expect a drop of [0.41 V](calc:wire-drop?current=6 A&length=4m&wire=14AWG#drop).

Good:

	## Steps

	1. Expect a drop of [0.41 V](calc:wire-drop?current=6A&length=4m&wire=14AWG#drop).
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			for _, mark := range [...]string{"](", "calc:", "reading:"} {
				at := strings.Index(t.Source, mark)
				if at < 0 || mark != "](" && !strings.Contains(t.Source[at:], "?") {
					continue
				}
				if codeAt(t, at) {
					continue
				}
				p.Report(t.prose.Span(at, at+len(mark)), "this is meant as a link, and is not read as one", "take spaces out of its address (a space is %20), and count its brackets")
				break
			}
		}
	},
}

// codeAt reports whether a place of the text is inside a code span, where a
// link is shown and not meant.
func codeAt(t *passage, at int) bool {
	inside := false
	place := t.prose.At(at)
	_ = ast.Walk(t.node, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if c, ok := n.(*ast.CodeSpan); ok && entering {
			for k := c.FirstChild(); k != nil; k = k.NextSibling() {
				if text, ok := k.(*ast.Text); ok && place >= text.Segment.Start && place < text.Segment.Stop {
					inside = true
				}
			}
		}
		return ast.WalkContinue, nil
	})
	return inside
}
