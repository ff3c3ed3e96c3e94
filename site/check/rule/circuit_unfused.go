package rule

import (
	"baybook/site/check"
)

var circuitUnfused = &check.Rule{
	Name: "circuit-unfused",
	Firm: true,
	Doc: `A wire from the source has a fuse within a hand's length

Nothing protects the piece before the fuse, so it is kept to 178 mm bare and
1016 mm in a sheath of its own (33 CFR 183.455, a law for boats, used as good
practice). A load has a fuse before it wherever it is. Wires of the vehicle
itself count as the source.`,
	Check: func(p *check.Pass) { judged(p, "unfused") },
}
