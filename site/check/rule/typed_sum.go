package rule

import (
	"math"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
)

var typedSum = &check.Rule{
	Name: "typed-sum",
	Firm: true,
	Doc: `A sum or a product that is written out comes out

"2 × 70 mA = 140 mA" is read as proof. Sums, differences, products and quotients
with an equals sign behind them are worked out from left to right, products
first, and must agree at the digits that they show.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			for _, e := range equations(t.Source, t.Quantities()) {
				v, unit, ok := e.value()
				if !ok || e.result.Tolerates(v) || near(v, e.result.Value) && e.about {
					continue
				}
				p.Report(t.QuantitySpan(&e.result), "this comes out at "+strings.TrimSpace(shownLike(v, e.result.Decimals)+" "+unit)+", not "+e.result.String(), "correct the number, or what it is worked out from")
			}
		}
	},
}

// An equation is terms, the signs between them, and the number behind the
// equals sign.
type equation struct {
	terms  []english.Quantity
	signs  []byte // + - * /
	result english.Quantity
	about  bool // ≈
}

// equations finds the sums that a text works out.
func equations(text string, numbers []english.Quantity) []equation {
	var list []equation
	for i := 0; i < len(numbers); i++ {
		e := equation{terms: []english.Quantity{numbers[i]}}
		k := i + 1
		for ; k < len(numbers); k++ {
			sign, found := signs[strings.TrimSpace(text[numbers[k-1].End:numbers[k].Start])]
			if !found {
				break
			}
			if sign == '=' || sign == '~' {
				e.result, e.about = numbers[k], sign == '~'
				break
			}
			e.signs, e.terms = append(e.signs, sign), append(e.terms, numbers[k])
		}
		if len(e.signs) > 0 {
			if e.result.Number != "" {
				list = append(list, e)
			}
			i = k - 1
		}
	}
	return list
}

// signs are the signs of arithmetic as people type them.
var signs = map[string]byte{"+": '+', "−": '-', "-": '-', "–": '-', "×": '*', "x": '*', "*": '*', "·": '*', "/": '/', "÷": '/', "=": '=', "≈": '~'}

// value works the terms out, in the unit of the result; false where the units
// say nothing about each other.
func (e *equation) value() (v float64, unit string, ok bool) {
	if e.result.Bare != (e.result.Unit.Symbol == "") {
		return 0, "", false
	}
	var sum float64
	for at := 0; at < len(e.terms); {
		product := e.terms[at]
		value, u := si(&product)
		sign := byte('+')
		if at > 0 {
			sign = e.signs[at-1]
		}
		for at++; at < len(e.terms) && (e.signs[at-1] == '*' || e.signs[at-1] == '/'); at++ {
			next, nu := si(&e.terms[at])
			if u, ok = combined(u, nu, e.signs[at-1]); !ok {
				return 0, "", false
			}
			if e.signs[at-1] == '*' {
				value *= next
			} else {
				value /= next
			}
		}
		if u != e.result.Unit.Dim {
			return 0, "", false
		}
		if sign == '-' {
			value = -value
		}
		sum += value
	}
	if math.IsInf(sum, 0) || math.IsNaN(sum) {
		return 0, "", false
	}
	return fromSI(sum, e.result.Unit), e.result.Unit.Symbol, true
}

// si is a number in the unit that its dimension is counted in.
func si(q *english.Quantity) (float64, calc.Dimension) {
	if q.Bare {
		return q.Value, calc.None
	}
	return q.Value * q.Unit.Base, q.Unit.Dim
}

func fromSI(v float64, unit calc.Unit) float64 {
	if unit.Base == 0 {
		return v
	}
	return v / unit.Base
}

// products are the dimensions that multiply to a third one.
var products = [...][3]calc.Dimension{
	{calc.Voltage, calc.Current, calc.Power}, {calc.Current, calc.Resistance, calc.Voltage},
}

// combined is the dimension of a product or quotient.
func combined(a, b calc.Dimension, sign byte) (calc.Dimension, bool) {
	if b == calc.None {
		return a, true
	}
	if sign == '*' && a == calc.None {
		return b, true
	}
	if sign == '/' && a == b {
		return calc.None, true
	}
	for _, p := range products {
		switch {
		case sign == '*' && (p[0] == a && p[1] == b || p[0] == b && p[1] == a):
			return p[2], true
		case sign == '/' && p[2] == a && p[0] == b:
			return p[1], true
		case sign == '/' && p[2] == a && p[1] == b:
			return p[0], true
		}
	}
	return calc.None, false
}
