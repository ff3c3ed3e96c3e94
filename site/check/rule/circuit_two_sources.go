package rule

import (
	"baybook/site/check"
)

var circuitTwoSources = &check.Rule{
	Name: "circuit-two-sources",
	Doc: `No named state joins two sources

The fuller battery feeds the other with all that the wire lets through, and a
fuse that is out leaves its wire live from the other side.`,
	Check: func(p *check.Pass) { judged(p, "two-sources") },
}
