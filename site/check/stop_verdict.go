package check

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"
)

var stopVerdict = &Rule{
	Name: "stop-verdict",
	Firm: true,
	Doc: `No sheet shows a computation whose verdict is stop

A calculator that says stop says: do not do this. A sheet that shows such a case
as its own would tell a tech to do it.

Bad:

	## Steps

	1. Fit a fuse of [40 A](calc:fuse-size?load=30A&wire=20AWG#fuse) at the source.

Good:

	## Steps

	1. Fit a fuse of [4 A](calc:fuse-size?load=3A&wire=16AWG#fuse) at the source.
`,
	Check: func(p *Pass) {
		for _, v := range p.Sheet.Values {
			p.verdict(&v.Computation, v.Result)
		}
		for _, l := range p.Sheet.Calculators {
			p.verdict(&l.Computation, l.Result)
		}
	},
}

func (p *Pass) verdict(c *sheet.Computation, result *calc.Result) {
	if result != nil && result.Verdict == calc.Stop {
		p.Report(c.Link, c.Calculator.Name+" says stop: "+strings.Join(result.Reasons, "; "), "change the inputs until the work is safe")
	}
}
