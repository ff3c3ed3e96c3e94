package rule

import (
	"baybook/site/check"
)

var circuitWrong = &check.Rule{
	Name: "circuit-wrong",
	Firm: true,
	Doc: `A drawing that is marked as showing a mistake shows that mistake

The mark wrong: [tap-turned] keeps the mistake from stopping the book, so the
mistake has to be there. A drawing put right loses its mark.`,
	Check: func(p *check.Pass) { judged(p, "wrong") },
}
