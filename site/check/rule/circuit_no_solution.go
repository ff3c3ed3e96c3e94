package rule

import (
	"baybook/site/check"
)

var circuitNoSolution = &check.Rule{
	Name: "circuit-no-solution",
	Doc: `Every load can be given what it asks for

A device of constant power draws more the less it gets, and behind a long thin
wire there is no voltage at which it works. A relay that takes its own coil's
supply away finds no rest either.`,
	Check: func(p *check.Pass) { judged(p, "no-solution") },
}
