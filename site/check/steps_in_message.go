package check

import (
	"github.com/yuin/goldmark/ast"
)

var stepsInMessage = &Rule{
	Name: "steps-in-message",
	Doc: `A safety message holds no steps

A message says how to avoid a hazard; work that must be done is a step of its
own, with a number and a tick. A numbered list in a message hides it.

Bad:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell. Run the engine outdoors.
	>
	> 1. Put the extraction on the tailpipe.
	> 2. Read for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			for n := m.FirstChild(); n != nil; n = n.NextSibling() {
				if list, ok := n.(*ast.List); ok && list.IsOrdered() {
					p.Report(m.Span, "the message holds a numbered list", "make steps of it, and keep in the message how the hazard is avoided")
				}
			}
		}
	},
}
