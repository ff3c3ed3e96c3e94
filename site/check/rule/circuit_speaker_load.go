package rule

import (
	"baybook/site/check"
)

var circuitSpeakerLoad = &check.Rule{
	Name: "circuit-speaker-load",
	Doc: `The speakers on an output are a load that it bears

Two speakers side by side halve the ohms, and an amplifier under its least load
dies hot. A speaker that is given more than it bears is warned of.`,
	Check: func(p *check.Pass) { judged(p, "speaker-load") },
}
