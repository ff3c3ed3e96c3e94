package rule

import (
	"baybook/site/check"
)

var circuitWireBurns = &check.Rule{
	Name: "circuit-wire-burns",
	Firm: true,
	Doc: `A dead short at the far end opens a fuse before the wire burns

The short-circuit current is computed through every resistance on the way, the
fuse is taken at its slowest, and the wire bears k²S² (IEC 60364-4-43).`,
	Check: func(p *check.Pass) { judged(p, "wire-burns") },
}
