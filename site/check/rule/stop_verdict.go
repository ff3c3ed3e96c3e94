package rule

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/sheet"
)

var stopVerdict = &check.Rule{
	Name: "stop-verdict",
	Firm: true,
	Doc: `No sheet shows a computation whose verdict is stop

A calculator that says stop says: do not do this. A sheet that shows such a case
as its own would tell a tech to do it.`,
	Check: func(p *check.Pass) {
		for _, v := range p.Sheet.Values {
			verdict(p, &v.Computation, v.Result)
		}
		for _, l := range p.Sheet.Calculators {
			verdict(p, &l.Computation, l.Result)
		}
	},
}

func verdict(p *check.Pass, c *sheet.Computation, result *calc.Result) {
	if result != nil && result.Verdict == calc.Stop {
		p.Report(c.Link, c.Calculator.Name+" says stop: "+strings.Join(result.Reasons, "; "), "change the inputs until the work is safe")
	}
}
