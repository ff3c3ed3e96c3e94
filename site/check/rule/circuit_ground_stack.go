package rule

import (
	"baybook/site/check"
	"baybook/site/finding"
)

var circuitGroundStack = &check.Rule{
	Name:     "circuit-ground-stack",
	Severity: finding.Warning,
	Doc: `At most four wires stand on one ground

More do not hold one another down for long (CASA AC 21-99).`,
	Check: func(p *check.Pass) { judged(p, "ground-stack") },
}
