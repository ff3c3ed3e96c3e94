package rule

import (
	"math"
	"strconv"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var computedNumber = &check.Rule{
	Name: "computed-number",
	Firm: true,
	Doc: `A computed number reads what its formula gives

The text of a calc: link is worked out again at every check, and must agree at
the digits that it shows. The fix writes the formula's number with the digits
and the unit that the author chose; no waiver keeps a wrong one.`,
	Check: func(p *check.Pass) {
		for _, v := range p.Sheet.Values {
			value(p, v)
		}
	},
}

// value checks one computed number.
func value(p *check.Pass, v *sheet.Value) {
	out := &v.Calculator.Outputs[v.Outputs[0]]
	answer := v.Result.Outputs[v.Outputs[0]]
	if !answer.Present {
		p.Report(v.Link, v.Calculator.Name+" gives no "+out.Name+" for these inputs: "+strings.Join(v.Result.Reasons, "; "),
			"change the inputs, or take the number out")
		return
	}
	shown := out.Format(answer)
	if answer.Text != "" && sameWords(v.Words, answer.Text) {
		return
	}
	list := english.Quantities(v.Words)
	unit, _ := calc.LookupUnit(out.Unit)
	switch {
	case out.Text:
		p.Report(v.Span, "the formula gives “"+shown+"” here, not “"+v.Words+"”", "write "+shown, fixWords(p, v, shown))
		return
	case len(list) == 0:
		p.Report(v.Span, "“"+v.Words+"” holds no number, and the formula gives "+shown, "write "+shown, fixWords(p, v, shown))
		return
	}
	q := list[0]
	compare(p, v, &q, answer, unit, shown)
}

// compare compares the number as written with the formula's.
func compare(p *check.Pass, v *sheet.Value, q *english.Quantity, answer calc.Answer, unit calc.Unit, shown string) {
	if q.Unit.Symbol == "AWG" {
		p.Report(v.Span, "the formula gives "+shown+" here, not "+v.Words, "write "+shown, fixWords(p, v, shown))
		return
	}
	want := answer.Num
	if q.Bare && unit.Symbol != "" && unit.Dim != calc.Pixels { // a row of a picture is counted
		whole := shownLike(want, q.Decimals) + " " + unit.Symbol
		p.Report(v.Span, "the number has no unit; the formula gives "+shown, "write "+whole, fixDigits(p, v, q, whole))
		return
	}
	if !q.Bare {
		converted, ok := english.Within(answer.Num, unit, q.Unit)
		if !ok {
			p.Report(v.Span, "the text has "+q.Unit.Symbol+", and the formula gives "+shown, "write "+shown, fixWords(p, v, shown))
			return
		}
		want = converted
	}
	if q.Tolerates(want) {
		return
	}
	digits := shownLike(want, q.Decimals)
	whole := strings.TrimSpace(digits + " " + q.Unit.Symbol)
	p.Report(v.Span, "the formula gives "+whole+" here, not "+v.Words, "write "+whole, fixDigits(p, v, q, digits))
}

// shownLike writes a value with the given number of decimals, and with more
// where it would come out as zero.
func shownLike(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if v != 0 && strings.Trim(s, "-0.") == "" {
		return calc.Format(v, 2)
	}
	if math.Signbit(v) && strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return s
}

// sameWords compares two texts without regard to case and space.
func sameWords(a, b string) bool {
	squeeze := func(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), "")) }
	return squeeze(a) == squeeze(b)
}
