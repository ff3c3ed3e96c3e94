package check

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var unbackedNumber = &Rule{
	Name:     "unbacked-number",
	Severity: finding.Warning,
	Doc: `A number with a unit says where it comes from

A reader can then tell a computed number from a sourced and a remembered one.
A number in the steps, the proof or a message is backed where it is computed
(calc:), read (reading:), an input of a computation of the page, or on the
list of tools and materials; where its paragraph names a source or says
"common practice", "example" or "from memory"; or where the Sources section
gives the same number.

Bad:

	## Steps

	1. Put the lamp 250 mm from the glass.

Good:

	## Steps

	1. Put the lamp 250 mm from the glass (common practice).
`,
	Check: func(p *Pass) {
		backed := p.backing()
		for _, t := range p.facts.passages {
			if t.step == nil && !t.in("Prove it") && t.message == nil {
				continue
			}
			if namesSource(t.Source) {
				continue
			}
			for _, q := range quantities(t.Source) {
				if q.Bare || q.Unit.Symbol == "" || isLink(t, q.number) || isGauge(&q) || backed.has(&q) {
					continue
				}
				p.Report(t.prose.Span(q.all.Start, q.all.End), "nothing says where "+q.String()+" comes from", "compute it (calc:), name its source here or in Sources, or say (common practice)")
			}
		}
	},
}

// isGauge reports a wire gauge, which is a name of a size.
func isGauge(q *quantity) bool { return q.Unit.Symbol == "AWG" }

// A backing is the numbers of a sheet that something stands behind.
type backing []calc.Quantity

// has reports whether the same quantity is among them, in whatever unit.
func (b backing) has(q *quantity) bool {
	for _, k := range b {
		if v, ok := within(k.Value, k.Unit, q.Unit); ok && math.Abs(math.Abs(v)-math.Abs(q.Value)) <= 1e-6*math.Max(math.Abs(v), 1e-9) {
			return true
		}
	}
	return false
}

// backing collects what is computed, read, put in, listed or sourced.
func (p *Pass) backing() backing {
	var b backing
	add := func(text string) {
		for _, q := range quantities(text) {
			b = append(b, q.Quantity)
		}
	}
	for _, t := range [...][]string{p.Sheet.Front.Tools, p.Sheet.Front.Materials} {
		add(strings.Join(t, "; "))
	}
	for _, t := range p.facts.passages {
		if t.in("Sources") || t.step == nil && t.message == nil && namesSource(t.Source) {
			add(t.Source)
		}
	}
	for _, r := range p.Sheet.Readings {
		add(r.Limit.String())
	}
	p.computations(func(c *sheet.Computation) {
		for _, pair := range c.Pairs {
			for value := range strings.SplitSeq(pair.Value, ",") {
				add(value)
			}
		}
	})
	for _, v := range p.Sheet.Values {
		add(v.Words)
	}
	return b
}

// computations runs over every calc: link of the sheet.
func (p *Pass) computations(do func(*sheet.Computation)) {
	for _, v := range p.Sheet.Values {
		do(&v.Computation)
	}
	for _, l := range p.Sheet.Lives {
		do(&l.Computation)
	}
	for _, t := range p.Sheet.Tables {
		do(&t.Computation)
	}
	for _, q := range p.Sheet.Problems {
		do(&q.Computation)
	}
}

// sourceWords name a kind of source, or say that there is none.
var sourceWords = []string{
	"practice", "from memory", "example", "invented", "handbook", "data sheet", "datasheet", "maker", "manufacturer", "as measured",
	"shop limit", "shop's limit", "house limit", "book limit", "training text", "by the table", "council", "catalogue",
	"CFR", "ISO", "IEC", "DIN", "SAE", "ANSI", "ASTM", "FMVSS", "HSE", "NIOSH", "NFPA", "EN ", "UL ", "ABYC", "AC 43", "USC", "MIL-", "AES", "OSHA", "NHTSA", "FAA", "O*NET", "Title 13", "W3C", "ECE", "UN R",
}

// namesSource reports whether a text says where its numbers come from.
func namesSource(text string) bool {
	for _, w := range sourceWords {
		if strings.Contains(text, w) {
			return true
		}
	}
	return false
}
