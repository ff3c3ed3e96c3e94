package rule

import (
	"baybook/site/check"
)

var circuitFuseOverWire = &check.Rule{
	Name: "circuit-fuse-over-wire",
	Firm: true,
	Doc: `No fuse lets through more than the wire behind it may carry

A fuse protects the wire, not the device. What a wire may carry is that of
the calculator fuse-size: size, insulation, air and bundle. Where a wire has
two feeds, their fuses count together.`,
	Check: func(p *check.Pass) { judged(p, "fuse-over-wire") },
}
