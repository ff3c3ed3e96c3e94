package rule

import (
	"baybook/site/check"
)

var circuitTap = &check.Rule{
	Name: "circuit-tap",
	Firm: true,
	Doc: `A fuse tap leaves its slot the room that it needs

It is judged by the calculator fuse-tap: what the slot feeds already and what
is added stay under four fifths of the slot's fuse, the tap's fuse is no larger
than the slot's own, and a safety circuit is never tapped.`,
	Check: func(p *check.Pass) { judged(p, "tap") },
}
