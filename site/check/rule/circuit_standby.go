package rule

import (
	"baybook/site/check"
)

var circuitStandby = &check.Rule{
	Name: "circuit-standby",
	Doc: `Parked, the battery lasts for as long as the vehicle stands

It is judged by the calculator standby, with what the parked state draws, the
battery's capacity, and limits: {parked: ...}.`,
	Check: func(p *check.Pass) { judged(p, "standby") },
}
