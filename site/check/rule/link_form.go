package rule

import (
	"strings"

	"baybook/site/check"

	"github.com/yuin/goldmark/ast"
)

var linkForm = &check.Rule{
	Name: "link-form",
	Firm: true,
	Doc: `A link is written so that Markdown reads it as one

A space in the address, or a bracket too few, leaves the link's source standing
in the text, and the number in it unchecked. Write a space in a query as %20, or
leave it out.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			for _, mark := range [...]string{"](", "calc:", "reading:"} {
				at := strings.Index(t.Source, mark)
				if at < 0 || mark != "](" && !strings.Contains(t.Source[at:], "?") {
					continue
				}
				if codeAt(t, at) {
					continue
				}
				p.Report(t.Prose.Span(at, at+len(mark)), "this is meant as a link, and is not read as one", "take spaces out of its address (a space is %20), and count its brackets")
				break
			}
		}
	},
}

// codeAt reports whether a place of the text is inside a code span, where a
// link is shown and not meant.
func codeAt(t *check.Passage, at int) bool {
	inside := false
	place := t.Prose.At(at)
	_ = ast.Walk(t.Node, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
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
