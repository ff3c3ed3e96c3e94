package rule

import (
	"baybook/site/check"
)

var circuitShort = &check.Rule{
	Name: "circuit-short",
	Firm: true,
	Doc: `No wire joins the two terminals of a source

A wire that leads straight from plus to minus carries hundreds of amperes until
something burns. It is looked for in every named state.`,
	Check: func(p *check.Pass) { judged(p, "short") },
}
