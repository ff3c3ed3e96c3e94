package rule

import (
	"math"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
)

var conversion = &check.Rule{
	Name: "conversion",
	Firm: true,
	Doc: `A number and its conversion in brackets are the same quantity

"300 mm (12 in)" is read by two people with two rules in their hands. The
number in brackets may be rounded as a person rounds, not wrong.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			list := t.Quantities()
			for i := 1; i < len(list); i++ {
				a, b := &list[i-1], &list[i]
				if !english.InBrackets(t.Source, a, b) || a.Unit.Symbol == b.Unit.Symbol {
					continue
				}
				v, ok := english.Within(a.Value, a.Unit, b.Unit)
				if !ok || a.Unit.Dim == calc.None || near(v, b.Value) || b.Tolerates(v) {
					continue
				}
				p.Report(t.Prose.Span(b.Start, b.End), a.String()+" is "+calc.FormatUnit(v, 3, b.Unit.Symbol)+", not "+b.String(), "correct one of the two")
			}
		}
	},
}

// near reports two values that a person's rounding can bring together.
func near(a, b float64) bool {
	const rounding = 0.06
	return math.Abs(a-b) <= rounding*math.Max(math.Abs(a), math.Abs(b))
}
