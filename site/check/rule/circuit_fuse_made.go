package rule

import (
	"baybook/site/check"
)

var circuitFuseMade = &check.Rule{
	Name: "circuit-fuse-made",
	Doc: `A fuse is of a rating in which its type is made

Types C, E and F are those of ISO 8820-3. A short that drives more than the
type can break is warned of.`,
	Check: func(p *check.Pass) { judged(p, "fuse-made") },
}
