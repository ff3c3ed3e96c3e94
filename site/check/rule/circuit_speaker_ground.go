package rule

import (
	"baybook/site/check"
)

var circuitSpeakerGround = &check.Rule{
	Name: "circuit-speaker-ground",
	Doc: `No output of an amplifier touches the ground or the supply

A bridged output, or that of a radio, has no grounded side; joined to one it
dies.`,
	Check: func(p *check.Pass) { judged(p, "speaker-ground") },
}
