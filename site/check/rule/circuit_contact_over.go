package rule

import (
	"baybook/site/check"
)

var circuitContactOver = &check.Rule{
	Name: "circuit-contact-over",
	Doc: `A contact carries no more than its rating

Of a relay or a connector, where the drawing gives a rating.`,
	Check: func(p *check.Pass) { judged(p, "contact-over") },
}
