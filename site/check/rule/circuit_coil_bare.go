package rule

import (
	"baybook/site/check"
)

var circuitCoilBare = &check.Rule{
	Name: "circuit-coil-bare",
	Doc: `A relay's coil has something across it

A coil that is switched off throws a pulse of tens of volts at whatever
switches it: test pulses reach −75 V to −100 V (ISO 7637-2, from memory).`,
	Check: func(p *check.Pass) { judged(p, "coil-bare") },
}
