package rule

import (
	"math"
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var repeatedNumber = &check.Rule{
	Name: "repeated-number",
	Firm: true,
	Doc: `A number that repeats a computed one agrees with it

Where a sheet computes a fuse, a hole or a drop, another place that speaks of
"the 10 A fuse" gives the same number, or one that the computations take in.
Computed once and typed twice, the two drift apart with the next revision.`,
	Check: func(p *check.Pass) {
		computed := p.Facts.ComputedNumbers()
		if len(computed) == 0 {
			return
		}
		known := p.Facts.Inputs()
		for _, t := range p.Facts.Passages {
			if t.Kind == check.QuestionText || t.Kind == check.AnswerText || t.Kind == check.Explanation || t.Under(sheet.Sources) || !t.TellsWork() || saysExample(t.Source) {
				continue
			}
			for _, q := range t.Quantities() {
				if q.Bare || t.Computes(&q) {
					continue
				}
				repeated(p, t, &q, computed, known)
			}
		}
	},
}

func saysExample(text string) bool { return strings.Contains(text, "example") }

// repeated reports a number with the noun of a computed one, where its value
// is neither computed for that noun nor known otherwise.
func repeated(p *check.Pass, t *check.Passage, q *english.Quantity, computed []check.ComputedNumber, known check.NumberList) {
	var first *check.ComputedNumber
	for i := range computed {
		c := &computed[i]
		v, ok := english.Within(c.Quantity.Value, c.Quantity.Unit, q.Unit)
		if !ok || !english.SpeaksOf(t.Source, q, c.Noun) {
			continue
		}
		if q.Tolerates(v) || math.Abs(v-q.Value) <= 0.005*math.Abs(v) {
			return
		}
		if first == nil {
			first = c
		}
	}
	if first == nil || known.Has(q) {
		return
	}
	p.Report(t.Prose.Span(q.Start, q.End), "this sheet computes the "+first.Noun+" as "+first.Shown+", and here it is "+q.String(),
		"write "+first.Shown+", or compute this one too", check.WithNote(p.Sheet.Source, first.Value.Span.Start, "computed here"))
}
