package rule

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var typedNumber = &check.Rule{
	Name: "typed-number",
	Firm: true,
	Doc: `A number with a unit is computed, a limit, the size of a part, or marked as descriptive

A number that is only typed stays as it is when the thing behind it changes. In
steps, proofs, messages, tables, captions, questions and jobs, a number with a
unit is computed (calc:), a limit (limit:), read (reading:), what a computation
beside it was worked out from, or the size of a part or tool that the sentence
names, such as a 3 mm bit or a 10 A fuse. Where it only describes, mark it:
[about 5 min](about:). A caption cannot hold a link, so it repeats numbers of the
sheet. Wrong options of a question are left alone: they are wrong on purpose.`,
	Check: func(p *check.Pass) {
		stands := sync.OnceValue(func() quantityList { return standing(p) })
		for _, group := range contexts(p.Facts) {
			computations := within(p, group)
			for _, t := range group {
				if mustStand(p, t) {
					typedNumbers(p, t, computations, stands)
				}
			}
		}
		for _, t := range p.Facts.Passages {
			if t.Kind == check.Cell && mustStand(p, t) {
				typedNumbers(p, t, within(p, []*check.Passage{t}), stands)
			}
		}
	},
}

// mustStand reports a passage that people act by.
func mustStand(p *check.Pass, t *check.Passage) bool {
	switch {
	case t.Under(sheet.Sources), t.Message != nil:
		return false
	case t.Step != nil || t.Under(sheet.ProveIt), p.Sheet.Front.Kind == sheet.Job:
		return true
	}
	switch t.Kind {
	case check.Cell, check.Caption, check.QuestionText, check.AnswerText, check.Explanation:
		return true
	}
	return false
}

// typedNumbers reports the numbers of one passage that stand on nothing.
func typedNumbers(p *check.Pass, t *check.Passage, computations []*sheet.Computation, stands func() quantityList) {
	list := t.Quantities()
	sums := equations(t.Source, list)
	for i := range list {
		q := &list[i]
		switch {
		case q.Bare, q.IsGauge(), t.Computes(q), t.Nominal(q), isNominal(t.Source, q), namesPart(p, t, q), isName(p, t, q), inCodeAt(t, t.Prose.Span(q.Start, q.End).Start), isHeld(p, t, q),
			i > 0 && english.Restates(t.Source, &list[i-1], q),
			len(computations) > 0 && inputsOf(computations).has(q),
			t.Kind == check.Caption && stands().has(q),
			slices.ContainsFunc(sums, func(e equation) bool { return e.result.Start == q.Start }):
			continue
		}
		p.Report(t.QuantitySpan(q), q.String()+" is typed freely: nothing holds it",
			"compute it (calc:), take it from the limits (limit:), or mark it ["+q.String()+"](about:) where it only describes")
	}
}

// inputsOf are the numbers that computations take in and give.
func inputsOf(computations []*sheet.Computation) quantityList {
	var list quantityList
	for _, c := range computations {
		for _, pair := range c.Pairs {
			for _, q := range english.Quantities(strings.ReplaceAll(pair.Value, "x", " ")) {
				list = append(list, q.Quantity)
			}
		}
	}
	return list
}

// namesPart reports a number that is the size of a part or a tool which the
// text names beside it: "3 mm pilot bit", "fuse of 10 A", "two 4 ohm speakers".
func namesPart(p *check.Pass, t *check.Passage, q *english.Quantity) bool {
	switch q.Unit.Dim {
	case calc.Time, calc.Temperature, calc.Level, calc.Ratio, calc.Frequency:
		return false // no size of a part
	}
	after, _ := slices.BinarySearchFunc(t.Words, q.End, func(w english.Word, at int) int { return cmp.Compare(w.Start, at) })
	for i := after; i < min(after+3, len(t.Words)); i++ {
		w := &t.Words[i]
		if w.Break > english.Hyphen || w.Number || english.Determines(w.Lower) || joins[w.Lower] {
			break
		}
		if p.Shared.WorkWords.IsPart(w.Stem) || isListed(p, q, w.Stem) {
			return true
		}
	}
	first, _ := slices.BinarySearchFunc(t.Words, q.Start, func(w english.Word, at int) int { return cmp.Compare(w.Start, at) })
	return first >= 2 && t.Words[first-1].Lower == "of" && t.Words[first-1].Break == english.NoBreak && p.Shared.WorkWords.IsPart(t.Words[first-2].Stem)
}

// isListed reports a size with which the sheet's tools or materials list a
// thing.
func isListed(p *check.Pass, q *english.Quantity, thing string) bool {
	for _, list := range [...][]*english.Text{p.Facts.Front.Tools, p.Facts.Front.Materials} {
		for _, t := range list {
			if !slices.ContainsFunc(t.Words, func(w english.Word) bool { return w.Stem == thing }) {
				continue
			}
			for _, size := range english.Quantities(t.Source) {
				if v, ok := english.Within(size.Value, size.Unit, q.Unit); ok && !size.Bare && q.Tolerates(v) {
					return true
				}
			}
		}
	}
	return false
}

// joins are words that end the name of a thing.
var joins = map[string]bool{
	"of": true, "to": true, "from": true, "in": true, "on": true, "at": true, "by": true, "for": true, "with": true, "and": true, "or": true,
	"is": true, "are": true, "was": true, "has": true, "have": true, "than": true, "before": true, "behind": true, "after": true, "under": true, "over": true,
}

// isName reports digits that only look like a number with a unit: "UL 486A",
// "step 6 in the bay".
func isName(p *check.Pass, t *check.Passage, q *english.Quantity) bool {
	fields := strings.Fields(t.Source[:q.Start])
	if len(fields) == 0 {
		return false
	}
	before := strings.Trim(fields[len(fields)-1], "(")
	return before == "step" || before == "steps" || before == strings.ToUpper(before) && p.Shared.Lexicon.NamesSource(before)
}

// isHeld reports what other facts of the sheet hold: the sum of a job's
// minutes, and the rating behind the mark of a fuse in the drawing, "F2: 25 A".
func isHeld(p *check.Pass, t *check.Passage, q *english.Quantity) bool {
	if minutes, ok := calc.LookupUnit("min"); ok && p.Sheet.Front.Kind == sheet.Job && q.Unit.Dim == calc.Time {
		sum, _ := english.Within(float64(p.Sheet.Front.Minutes), minutes, q.Unit)
		return q.Tolerates(sum)
	}
	fields := strings.Fields(t.Source[:q.Start])
	if len(fields) == 0 || q.Unit.Dim != calc.Current {
		return false
	}
	mark, ok := strings.CutPrefix(strings.Trim(fields[len(fields)-1], ":,"), "F")
	return ok && wholeNumber(mark) > 0 && p.Facts.Parts().Fuses.Has(q)
}

// standing are the numbers of a sheet that its captions may repeat.
func standing(p *check.Pass) quantityList {
	list := resultsOf(p)
	for _, t := range p.Facts.Passages {
		for _, q := range t.Quantities() {
			if t.Kind != check.Caption && !q.Bare {
				list = append(list, q.Quantity)
			}
		}
	}
	return list
}
