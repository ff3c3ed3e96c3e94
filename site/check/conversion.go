package check

import (
	"math"
	"strings"

	"baybook/calculators/calc"
)

var conversion = &Rule{
	Name: "conversion",
	Firm: true,
	Doc: `A number and its conversion in brackets are the same quantity

"300 mm (12 in)" is read by two people with two rules in their hands. The
number in brackets may be rounded as a person rounds, not wrong.

Bad:

	## Steps

	1. Tie the lead every 300 mm (10 in), which is common practice.

Good:

	## Steps

	1. Tie the lead every 300 mm (12 in), which is common practice.
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			list := t.quantities()
			for i := 1; i < len(list); i++ {
				a, b := &list[i-1], &list[i]
				if !inBrackets(t.Source, a, b) || a.Unit.Symbol == b.Unit.Symbol {
					continue
				}
				v, ok := within(a.Value, a.Unit, b.Unit)
				if !ok || a.Unit.Dim == calc.None || near(v, b.Value) || b.tolerates(v) {
					continue
				}
				p.Report(t.prose.Span(b.all.Start, b.all.End), a.String()+" is "+calc.FormatUnit(v, 3, b.Unit.Symbol)+", not "+b.String(), "correct one of the two")
			}
		}
	},
}

// near reports two values that a person's rounding can bring together.
func near(a, b float64) bool {
	const rounding = 0.06
	return math.Abs(a-b) <= rounding*math.Max(math.Abs(a), math.Abs(b))
}

// inBrackets reports whether b stands in brackets right behind a.
func inBrackets(text string, a, b *quantity) bool {
	return a.all.End <= b.number.Start && strings.TrimSpace(text[a.all.End:b.number.Start]) == "(" &&
		strings.HasPrefix(text[b.all.End:], ")") && !a.Bare && !b.Bare
}

// restates reports whether b only says a again in another unit.
func restates(text string, a, b *quantity) bool {
	return inBrackets(text, a, b) && a.Unit.Dim == b.Unit.Dim
}
