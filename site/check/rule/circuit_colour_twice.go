package rule

import (
	"baybook/site/check"
)

var circuitColourTwice = &check.Rule{
	Name: "circuit-colour-twice",
	Doc: `One colour has one function in a drawing

The next person follows the colour. A wire says its function; what returns to
the source is ground where nothing else is said.`,
	Check: func(p *check.Pass) { judged(p, "colour-twice") },
}
