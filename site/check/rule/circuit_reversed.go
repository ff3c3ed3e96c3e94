package rule

import (
	"baybook/site/check"
)

var circuitReversed = &check.Rule{
	Name: "circuit-reversed",
	Doc: `No load is connected the wrong way round

A lamp does not mind; a camera or an amplifier dies of it.`,
	Check: func(p *check.Pass) { judged(p, "reversed") },
}
