package check

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

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
