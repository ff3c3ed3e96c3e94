package check

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"
)

var repeatedNumber = &Rule{
	Name: "repeated-number",
	Firm: true,
	Doc: `A number that repeats a computed one agrees with it

Where a sheet computes a fuse, a hole or a drop, another place that speaks of
"the 10 A fuse" gives the same number, or one that the computations take in.
Computed once and typed twice, the two drift apart with the next revision.

Bad:

	## Before you start

	Lay out the 7.5 A fuse.

	## Steps

	1. Fit a fuse of [4 A](calc:fuse-size?load=3A&wire=16AWG#fuse) at the source.

Good:

	## Before you start

	Lay out the 4 A fuse.

	## Steps

	1. Fit a fuse of [4 A](calc:fuse-size?load=3A&wire=16AWG#fuse) at the source.
`,
	Check: func(p *Pass) {
		computed := p.computedBy()
		if len(computed) == 0 {
			return
		}
		known := p.backingOf()
		for _, t := range p.facts.passages {
			if t.kind == question || t.kind == option || t.kind == why || t.in("Sources") || !t.worksHere() || saysExample(t.Source) {
				continue
			}
			for _, q := range t.quantities() {
				if q.Bare || isLink(t, q.number) {
					continue
				}
				p.repeated(t, &q, computed, known)
			}
		}
	},
}

// worksHere reports a passage that speaks of this work: its opening, steps,
// proof, hand-over and messages.
func (t *passage) worksHere() bool {
	return t.step != nil || t.message != nil || t.in("Before you start") || t.in("Prove it") || t.in("Hand over")
}

func saysExample(text string) bool { return strings.Contains(text, "example") }

// A computedNumberOf is one computed value and what it is a value of.
type computedOf struct {
	noun  string
	value *sheet.Value
	shown string
	at    calc.Quantity
}

// computedBy lists the computed numbers of the sheet with the noun of each:
// the last word of its output's name.
func (p *Pass) computedBy() []computedOf {
	var list []computedOf
	for _, v := range p.Sheet.Values {
		out := &v.Calculator.Outputs[v.Outputs[0]]
		unit, ok := calc.LookupUnit(out.Unit)
		answer := v.Result.Outputs[v.Outputs[0]]
		if !ok || unit.Dim == calc.None || !answer.Present || out.Text {
			continue
		}
		noun := out.Name[strings.LastIndexByte(out.Name, '_')+1:]
		list = append(list, computedOf{noun, v, out.Format(answer), calc.Quantity{Value: answer.Num, Unit: unit}})
	}
	return list
}

// backingOf is the numbers that the sheet takes in or judges by.
func (p *Pass) backingOf() backing {
	var b backing
	p.computations(func(c *sheet.Computation) {
		for _, pair := range c.Pairs {
			for value := range strings.SplitSeq(pair.Value, ",") {
				for _, q := range quantities(value) {
					b = append(b, q.Quantity)
				}
			}
		}
	})
	for _, r := range p.Sheet.Readings {
		for _, q := range quantities(r.Limit.String()) {
			b = append(b, q.Quantity)
		}
	}
	return b
}

// repeated reports a number whose noun is that of a computed one and whose
// value is neither a computed one of that noun nor one that is known.
func (p *Pass) repeated(t *passage, q *quantity, computed []computedOf, known backing) {
	var first *computedOf
	for i := range computed {
		c := &computed[i]
		v, ok := within(c.at.Value, c.at.Unit, q.Unit)
		if !ok || !speaksOf(t.Source, q, c.noun) {
			continue
		}
		if q.tolerates(v) || math.Abs(v-q.Value) <= 0.005*math.Abs(v) {
			return
		}
		if first == nil {
			first = c
		}
	}
	if first == nil || known.has(q) {
		return
	}
	p.Report(t.prose.Span(q.all.Start, q.all.End), "this sheet computes the "+first.noun+" as "+first.shown+", and here it is "+q.String(),
		"write "+first.shown+", or compute this one too", withNote(p.Sheet.Source, first.value.Span.Start, "computed here"))
}

// speaksOf reports whether a number is one of the noun: "25 A fuse", "fuse of
// 25 A", "fuse is 25 A", "fuse: 25 A".
func speaksOf(text string, q *quantity, noun string) bool {
	after := strings.Fields(text[q.all.End:])
	if len(after) > 0 && strings.Trim(after[0], ".,;:)") == noun && strings.HasPrefix(text[q.all.End:], " ") {
		return true
	}
	before := strings.Fields(strings.ToLower(text[:q.all.Start]))
	n := len(before)
	if n >= 2 && (before[n-1] == "of" || before[n-1] == "is") && before[n-2] == noun {
		return true
	}
	return n >= 1 && before[n-1] == noun+":"
}
