package rule

import (
	"baybook/site/check"
	"baybook/site/finding"
)

var circuitLiveBehind = &check.Rule{
	Name:     "circuit-live-behind",
	Severity: finding.Warning,
	Doc: `What is behind a fuse is dead when the fuse is out

With two feeds to one wire, pulling one fuse leaves the wire live. Somebody
will put a tool to it. Say so on the label, or feed it once.`,
	Check: func(p *check.Pass) { judged(p, "live-behind") },
}
