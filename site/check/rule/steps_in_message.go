package rule

import (
	"baybook/site/check"

	"github.com/yuin/goldmark/ast"
)

var stepsInMessage = &check.Rule{
	Name: "steps-in-message",
	Firm: true,
	Doc: `A safety message holds no steps

A message says how to avoid a hazard; work that must be done is a step of its
own, with a number and a tick. A numbered list in a message hides it.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			for n := m.FirstChild(); n != nil; n = n.NextSibling() {
				if list, ok := n.(*ast.List); ok && list.IsOrdered() {
					p.Report(m.Span, "the message holds a numbered list", "make steps of it, and keep in the message how the hazard is avoided")
				}
			}
		}
	},
}
