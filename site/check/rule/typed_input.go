package rule

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

var typedInput = &check.Rule{
	Name: "typed-input",
	Firm: true,
	Doc: `What is typed beside a computed number is what it was computed from

"Over 8 m of 20 AWG a camera of 0.2 A loses 0.05 V": three numbers are typed and
one is computed, and whoever changes the run to 12 m changes one of them. A
number in the sentence, the question or the answer of a computation, of a kind
that it takes in, must be one of its inputs or results, or one of another
computation of the sheet.`,
	Check: func(p *check.Pass) {
		for _, stray := range strayInputs(p) {
			p.Report(stray.passage.QuantitySpan(stray.quantity), "the computation beside it takes no "+stray.quantity.String()+", and no other of this sheet does",
				"write what it was computed from, or compute it again", check.WithNote(p.Sheet.Source, stray.beside.Link.Start, "computed here"))
		}
	},
}

// A strayInput is a number beside a computation that knows nothing of it.
type strayInput struct {
	passage  *check.Passage
	quantity *english.Quantity
	beside   *sheet.Computation
}

// strayInputs lists those of a sheet.
func strayInputs(p *check.Pass) []strayInput {
	var list []strayInput
	known := resultsOf(p)
	for _, group := range contexts(p.Facts) {
		computations := within(p, group)
		if len(computations) == 0 {
			continue
		}
		for _, t := range group {
			for i := range t.Quantities() {
				q := &t.Quantities()[i]
				if !q.Bare && !t.Computes(q) && !t.Nominal(q) && takes(computations, q) && !known.has(q) && !loosely(t.Source, q) && !sourcedSentence(p, t, q) {
					list = append(list, strayInput{t, q, computations[0]})
				}
			}
		}
	}
	return list
}

// A quantityList is numbers, of which each may be rounded where it is typed.
type quantityList []calc.Quantity

// has reports whether a number is one of them at the digits that it shows.
func (l quantityList) has(q *english.Quantity) bool {
	for _, k := range l {
		v, ok := english.Within(k.Value, k.Unit, q.Unit)
		if ok && (q.Tolerates(v) || q.Tolerates(-v) || math.Abs(v-q.Value) <= 0.005*math.Abs(v)) {
			return true
		}
	}
	return false
}

// resultsOf are all numbers that the sheet's computations take in, the
// defaults too, and give.
func resultsOf(p *check.Pass) quantityList {
	list := quantityList(p.Facts.Inputs())
	add := func(text string) {
		for _, q := range english.Quantities(text) {
			list = append(list, q.Quantity)
		}
	}
	for _, c := range p.Sheet.Computations() {
		for i := range c.Calculator.Inputs {
			in := &c.Calculator.Inputs[i]
			add(in.Default + " " + in.Unit)
			for _, pair := range c.Pairs {
				if pair.Key == in.Name {
					for one := range strings.SplitSeq(pair.Value, ",") {
						if _, each, found := strings.Cut(one, "x"); found { // 4x2.0: four of 2.0 mm
							one = each
						}
						add(one + " " + in.Unit)
					}
				}
			}
		}
		list = append(list, differences(c)...)
	}
	results := func(c *sheet.Computation, r *calc.Result) {
		if r == nil {
			return
		}
		for i := range c.Calculator.Outputs {
			if unit, ok := calc.LookupUnit(c.Calculator.Outputs[i].Unit); ok && r.Outputs[i].Present {
				list = append(list, calc.Quantity{Value: r.Outputs[i].Num, Unit: unit})
			}
		}
	}
	for _, v := range p.Sheet.Values {
		results(&v.Computation, v.Result)
	}
	for _, c := range p.Sheet.Calculators {
		results(&c.Computation, c.Result)
	}
	return list
}

// differences are those between any two inputs of one kind: what is 0.7 m
// closer, where one is 0.9 m away and the other 1.6 m.
func differences(c *sheet.Computation) quantityList {
	var list quantityList
	for i, a := range c.Pairs {
		for _, b := range c.Pairs[i+1:] {
			x, y := english.Quantities(a.Value), english.Quantities(b.Value)
			if len(x) != 1 || len(y) != 1 || x[0].Unit.Dim == calc.None {
				continue
			}
			if v, ok := english.Within(y[0].Value, y[0].Unit, x[0].Unit); ok {
				list = append(list, calc.Quantity{Value: math.Abs(x[0].Value - v), Unit: x[0].Unit})
			}
		}
	}
	return list
}

// contexts are the passages that speak of one thing together: those of a
// question with its right answers and what explains them, and every other
// passage by itself.
func contexts(f *check.SheetFacts) [][]*check.Passage {
	var list [][]*check.Passage
	var question ast.Node
	for _, t := range f.Passages {
		var q ast.Node
		for n := t.Node; n != nil; n = n.Parent() {
			if _, ok := n.(*sheet.Question); ok {
				q = n
				break
			}
		}
		switch {
		case t.Kind == check.AnswerText && !t.Right || t.Under(sheet.Sources) || t.Kind == check.Cell:
		case q != nil && q == question:
			list[len(list)-1] = append(list[len(list)-1], t)
		default:
			list = append(list, []*check.Passage{t})
			question = q
		}
	}
	return list
}

// within are the computations in running text of some passages.
func within(p *check.Pass, group []*check.Passage) []*sheet.Computation {
	var list []*sheet.Computation
	for _, v := range p.Sheet.Values {
		for _, t := range group {
			if check.IsIn(v, t.Node) {
				list = append(list, &v.Computation)
			}
		}
	}
	return list
}

// takes reports whether one of the computations is given a number of the same
// kind, or gives one.
func takes(computations []*sheet.Computation, q *english.Quantity) bool {
	for _, c := range computations {
		for _, o := range c.Outputs {
			if unit, ok := calc.LookupUnit(c.Calculator.Outputs[o].Unit); ok && unit.Dim == q.Unit.Dim && unit.Dim != calc.None {
				return true
			}
		}
		for _, pair := range c.Pairs {
			for _, in := range english.Quantities(pair.Value) {
				if in.Unit.Dim == q.Unit.Dim && in.Unit.Dim != calc.None || in.IsGauge() && q.IsGauge() {
					return true
				}
			}
		}
	}
	return false
}

// sourcedSentence reports a number whose own sentence says where it comes
// from.
func sourcedSentence(p *check.Pass, t *check.Passage, q *english.Quantity) bool {
	for _, s := range t.Sentences {
		words := t.In(s)
		if len(words) == 0 || q.Start < words[0].Start || q.Start >= words[len(words)-1].End {
			continue
		}
		end := len(t.Source)
		if s.Last < len(t.Words) {
			end = t.Words[s.Last].Start
		}
		return p.Shared.Lexicon.NamesSource(t.Source[words[0].Start:end])
	}
	return false
}

// loosely reports whether the text itself calls a number inexact: about 10 A.
func loosely(text string, q *english.Quantity) bool {
	switch lastWord(text[:q.Start]) {
	case "about", "roughly", "nearly", "over", "under", "least", "most", "within", "than":
		return true
	}
	return false
}
