package check

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

// A ComputedNumber is a number that a calculator makes in running text.
type ComputedNumber struct {
	// Noun is what it is a number of: the last word of its output's name.
	Noun  string
	Value *sheet.Value
	// Shown is the number as the calculator writes it, Quantity the same.
	Shown    string
	Quantity calc.Quantity
}

// ComputedNumbers lists the computed numbers of the sheet.
func (f *SheetFacts) ComputedNumbers() []ComputedNumber {
	f.readNumbers()
	return f.computed
}

// Inputs are the numbers that the sheet's computations take in, its readings
// judge by and its links to the register of limits show.
func (f *SheetFacts) Inputs() NumberList {
	f.readNumbers()
	return f.inputs
}

// readNumbers fills both lists at the first call.
func (f *SheetFacts) readNumbers() {
	if f.numbered {
		return
	}
	f.numbered = true
	for _, v := range f.Sheet.Values {
		out := &v.Calculator.Outputs[v.Outputs[0]]
		unit, ok := calc.LookupUnit(out.Unit)
		answer := v.Result.Outputs[v.Outputs[0]]
		if !ok || unit.Dim == calc.None || !answer.Present || out.Text {
			continue
		}
		noun := out.Name[strings.LastIndexByte(out.Name, '_')+1:]
		f.computed = append(f.computed, ComputedNumber{noun, v, out.Format(answer), calc.Quantity{Value: answer.Num, Unit: unit}})
	}
	for _, c := range f.Sheet.Computations() {
		for _, pair := range c.Pairs {
			for value := range strings.SplitSeq(pair.Value, ",") {
				f.inputs.Add(english.Quantities(value))
			}
		}
	}
	for _, r := range f.Sheet.Readings {
		f.inputs.Add(english.Quantities(r.Limit.String()))
	}
	for _, l := range f.Sheet.Limits {
		f.inputs.Add(english.Quantities(l.Words))
	}
}

// A NumberList is numbers with their units, to look others up in.
type NumberList []calc.Quantity

// Add takes numbers in.
func (l *NumberList) Add(numbers []english.Quantity) {
	for _, q := range numbers {
		*l = append(*l, q.Quantity)
	}
}

// Has reports whether the same quantity is among them, in whatever unit.
func (l NumberList) Has(q *english.Quantity) bool {
	for _, k := range l {
		if v, ok := english.Within(k.Value, k.Unit, q.Unit); ok && math.Abs(math.Abs(v)-math.Abs(q.Value)) <= 1e-6*math.Max(math.Abs(v), 1e-9) {
			return true
		}
	}
	return false
}
