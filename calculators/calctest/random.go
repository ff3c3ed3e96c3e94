package calctest

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// RandomQuery makes a query with every input of a calculator given: anywhere
// in its range, and often at one of its ends, where formulas break.
func RandomQuery(r *rand.Rand, c *calc.Calculator) string {
	var pairs []calc.Pair
	for i := range c.Inputs {
		pairs = append(pairs, calc.Pair{Key: c.Inputs[i].Name, Value: randomValue(r, &c.Inputs[i])})
	}
	return calc.FormatQuery(pairs)
}

func randomValue(r *rand.Rand, in *calc.Input) string {
	switch {
	case in.Kind == calc.Word:
		return in.Words[r.IntN(len(in.Words))]
	case len(in.OneOf) > 0:
		return write(in.OneOf[r.IntN(len(in.OneOf))])
	case in.Kind == calc.Wire:
		return write(between(r, in.Min, in.Max)) + " mm2"
	case in.Kind == calc.Count:
		return write(math.Round(between(r, in.Min, in.Max)))
	case in.Kind == calc.Numbers:
		var items []string
		for range 1 + r.IntN(in.Most) {
			items = append(items, write(between(r, in.Min, in.Max)))
		}
		return strings.Join(items, ",")
	case in.Kind == calc.Bundle:
		var items []string
		for range 1 + r.IntN(4) {
			items = append(items, fmt.Sprintf("%dx%s", 1+r.IntN(max(1, min(6, in.Most/4))), write(between(r, in.Min, in.Max))))
		}
		return strings.Join(items, ",")
	}
	return write(between(r, in.Min, in.Max))
}

// between draws from a range: evenly, or evenly in proportion where the range
// spans decades, or one of its ends; to four figures, as people type.
func between(r *rand.Rand, low, top float64) float64 {
	v, _ := strconv.ParseFloat(strconv.FormatFloat(spread(r, low, top), 'g', 4, 64), 64)
	if v < low || v > top {
		return low
	}
	return v
}

func spread(r *rand.Rand, low, top float64) float64 {
	switch n := r.IntN(8); {
	case n == 0:
		return low
	case n == 1:
		return top
	case low > 0 && top/low > 20 && n < 6:
		return low * math.Pow(top/low, r.Float64())
	}
	return low + (top-low)*r.Float64()
}

func write(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
