package rule

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var readingWords = &check.Rule{
	Name: "reading-words",
	Firm: true,
	Doc: `The words of a reading say the limits that it is judged by

The text of a reading: link is what the tech reads, its query what the page
judges by. A value that the same line computes must lie within the limits.`,
	Check: func(p *check.Pass) {
		for _, r := range p.Sheet.Readings {
			readingText(p, r)
			readingAgainst(p, r)
		}
	},
}

// readingText compares the words of a reading with its limits.
func readingText(p *check.Pass, r *sheet.Reading) {
	var limits []calc.Quantity
	if r.Limit.HasMin {
		limits = append(limits, r.Limit.Min)
	}
	if r.Limit.HasMax {
		limits = append(limits, r.Limit.Max)
	}
	written := english.Quantities(r.Words)
	if len(written) == 2 && written[0].Bare && !written[1].Bare { // 11 to 13 V
		written[0].Unit, written[0].Bare = written[1].Unit, false
	}
	agree := len(written) == len(limits)
	for i := 0; agree && i < len(limits); i++ {
		v, ok := english.Within(limits[i].Value, limits[i].Unit, written[i].Unit)
		agree = ok && math.Abs(v-written[i].Value) <= 1e-9*math.Max(math.Abs(v), 1)
	}
	if agree {
		agree = !contradicts(r.Words, r.Limit)
	}
	if !agree {
		want := r.Limit.String()
		if len(limits) == 0 {
			want = "note it"
		}
		p.Report(r.Span, "the text says “"+r.Words+"”, and the reading is judged by “"+want+"”", "write "+want+", or correct the limits in the link")
	}
}

// contradicts reports words that turn a limit round.
func contradicts(words string, l calc.Limit) bool {
	plain := strings.ToLower(words)
	for _, turned := range [...][2]string{{"not over", "at most"}, {"not above", "at most"}, {"not more than", "at most"}, {"no more than", "at most"},
		{"not under", "at least"}, {"not below", "at least"}, {"not less than", "at least"}, {"no less than", "at least"}} {
		plain = strings.ReplaceAll(plain, turned[0], turned[1])
	}
	has := func(any ...string) bool {
		for _, a := range any {
			if strings.Contains(plain, a) {
				return true
			}
		}
		return false
	}
	switch {
	case l.HasMax && !l.HasMin:
		return has("at least", "more than", "above", "over ")
	case l.HasMin && !l.HasMax:
		return has("at most", "less than", "under ", "below", "up to")
	}
	return false
}

// readingAgainst compares a reading's limits with the values that the same
// block computes.
func readingAgainst(p *check.Pass, r *sheet.Reading) {
	for _, v := range p.Sheet.Values {
		if v.Parent() != r.Parent() || v.Span.Start > r.Span.Start {
			continue
		}
		out := &v.Calculator.Outputs[v.Outputs[0]]
		answer := v.Result.Outputs[v.Outputs[0]]
		unit, ok := calc.LookupUnit(out.Unit)
		if !ok || !answer.Present || out.Text || unit.Dim == calc.None || unit.Dim != r.Limit.Unit.Dim {
			continue
		}
		below := r.Limit.HasMin && calc.Under(round3(calc.Convert(answer.Num, unit, r.Limit.Min.Unit)), r.Limit.Min.Value)
		above := r.Limit.HasMax && calc.Over(round3(calc.Convert(answer.Num, unit, r.Limit.Max.Unit)), r.Limit.Max.Value)
		if below || above {
			p.Report(r.Span, "the same line computes "+out.Format(answer)+", which the reading's own limit, "+r.Limit.String()+", would refuse",
				"correct the limit, or the inputs of the computation", check.WithNote(p.Sheet.Source, v.Span.Start, "computed here"))
		}
	}
}

// round3 rounds to three significant figures, as results are shown.
func round3(v float64) float64 {
	if v == 0 {
		return 0
	}
	scale := math.Pow10(2 - int(math.Floor(math.Log10(math.Abs(v)))))
	return math.Round(v*scale) / scale
}
