package rule

import (
	"baybook/site/check"
)

var circuitWireOverloaded = &check.Rule{
	Name: "circuit-wire-overloaded",
	Doc: `No wire carries more in any state than it may for good

A ground wire has no fuse of its own, and carries what all the loads on it
draw.`,
	Check: func(p *check.Pass) { judged(p, "wire-overloaded") },
}
