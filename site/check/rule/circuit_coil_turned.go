package rule

import (
	"baybook/site/check"
)

var circuitCoilTurned = &check.Rule{
	Name: "circuit-coil-turned",
	Doc: `A coil with a diode across it has its positive side on 86

The other way round the diode conducts, and shorts the trigger.`,
	Check: func(p *check.Pass) { judged(p, "coil-turned") },
}
