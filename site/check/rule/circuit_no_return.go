package rule

import (
	"baybook/site/check"
)

var circuitNoReturn = &check.Rule{
	Name: "circuit-no-return",
	Doc: `Every load has a way from a source and a way back

A load without a return does nothing, or finds a way that nobody meant.`,
	Check: func(p *check.Pass) { judged(p, "no-return") },
}
