package rule

import (
	"baybook/site/check"
)

var circuitDrop = &check.Rule{
	Name: "circuit-drop",
	Doc: `What a load loses on the way there and back stays within the limit

In every named state, from the terminals of the source. The limit is that of
the drawing (3 % where none is written), or the load's own. A load may also say
the least voltage that it works at.`,
	Check: func(p *check.Pass) { judged(p, "drop") },
}
