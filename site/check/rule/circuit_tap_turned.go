package rule

import (
	"baybook/site/check"
)

var circuitTapTurned = &check.Rule{
	Name: "circuit-tap-turned",
	Doc: `A fuse tap takes its current from the feed side of its slot

Turned round, the added load runs through the vehicle's own fuse and can take
the vehicle's circuit down with it. A drawing that shows this mistake on
purpose says wrong: [tap-turned].`,
	Check: func(p *check.Pass) { judged(p, "tap-turned") },
}
