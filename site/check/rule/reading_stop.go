package rule

import (
	"slices"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/sheet"
)

var readingStop = &check.Rule{
	Name: "reading-stop",
	Firm: true,
	Doc: `No reading passes that the sheet's own calculator would stop

A ground that drops 100 mV under a 5 A lamp drops 400 mV under a load of 20 A.
Where a sheet has a calculator that takes what is read, its limit is put into
that calculator: what just passes there must not be a stop. The calculator's
name and its input stand in the reading's: ground-drop goes into ground-test as
its drop. Where the sentence says that it is read at full load, the calculator
is told so.`,
	Check: func(p *check.Pass) {
		for _, r := range p.Sheet.Readings {
			for _, c := range p.Sheet.Computations() {
				if !lists(c) && stopsAt(p, r, c) {
					break // one finding a reading
				}
			}
		}
	},
}

// lists reports a computation of several values at once: a table or a practice
// problem, which speaks of many cases.
func lists(c *sheet.Computation) bool {
	return slices.ContainsFunc(c.Pairs, func(p calc.Pair) bool { return strings.ContainsAny(p.Value, ",") || strings.Contains(p.Value, "..") })
}

// stopsAt reports whether a reading passes at its limit where the computation,
// given that limit for what is read, says stop.
func stopsAt(p *check.Pass, r *sheet.Reading, c *sheet.Computation) bool {
	noun := r.ID[strings.LastIndexByte(r.ID, '-')+1:]
	for i := range c.Calculator.Inputs {
		in := &c.Calculator.Inputs[i]
		unit, ok := calc.LookupUnit(in.Unit)
		if !ok || unit.Dim != r.Limit.Unit.Dim || in.Name != noun || !namesCalculator(r.ID, c.Calculator.Name) {
			continue
		}
		for _, limit := range limitsOf(r) {
			_, result, problems := c.Calculator.Answer(withInput(atLoad(p, r, c.Pairs), in.Name, limit.String()))
			if len(problems) > 0 || result == nil || result.Verdict != calc.Stop {
				continue
			}
			p.Report(r.Span, "a reading of "+limit.String()+" passes here, and "+c.Calculator.Name+" says stop to it: "+strings.Join(result.Reasons, "; "),
				"judge by the limit that the calculator accepts", check.WithNote(p.Sheet.Source, c.Link.Start, "with the other inputs of this computation"))
			return true
		}
	}
	return false
}

// namesCalculator reports whether a reading's name holds the first word of a
// calculator's: ground-drop that of ground-test.
func namesCalculator(id, calculator string) bool {
	first, _, _ := strings.Cut(calculator, "-")
	return slices.Contains(strings.Split(id, "-"), first)
}

// atLoad is a query whose current is its full load, where the reading's own
// sentence says that it is read so.
func atLoad(p *check.Pass, r *sheet.Reading, pairs []calc.Pair) []calc.Pair {
	full := slices.IndexFunc(pairs, func(p calc.Pair) bool { return p.Key == "full_load" })
	if full < 0 {
		return pairs
	}
	for _, t := range p.Facts.Passages {
		if !check.IsIn(r, t.Node) {
			continue
		}
		for _, words := range [...]string{"full load", "full current", "everything on", "same current", "carried up to"} {
			if strings.Contains(t.Source, words) {
				return withInput(pairs, "current", pairs[full].Value)
			}
		}
	}
	return pairs
}

// limitsOf are the values that a reading just passes at.
func limitsOf(r *sheet.Reading) []calc.Quantity {
	var list []calc.Quantity
	if r.Limit.HasMin {
		list = append(list, r.Limit.Min)
	}
	if r.Limit.HasMax {
		list = append(list, r.Limit.Max)
	}
	return list
}

// withInput is a query with one input given another value.
func withInput(pairs []calc.Pair, key string, value string) []calc.Pair {
	list := slices.DeleteFunc(slices.Clone(pairs), func(p calc.Pair) bool { return p.Key == key })
	return append(list, calc.Pair{Key: key, Value: strings.ReplaceAll(value, " ", "")})
}
