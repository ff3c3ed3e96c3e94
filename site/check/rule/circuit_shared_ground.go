package rule

import (
	"baybook/site/check"
)

var circuitSharedGround = &check.Rule{
	Name: "circuit-shared-ground",
	Doc: `A device at sensor level shares no ground wire with a load of power

The load lifts the ground of a camera or a radio by its own drop, and the drop
stands in the picture or the sound. Several wires on one point are right; one
wire for several is not. Devices say signal: yes.`,
	Check: func(p *check.Pass) { judged(p, "shared-ground") },
}
