package calc

import "strings"

// A Spread is a query that stands for more than one computation: some inputs
// are lists (a table) or ranges (a practice problem).
type Spread struct {
	Calculator *Calculator
	// Fixed are the pairs with one value.
	Fixed []Pair
	// Lists are the inputs with several values, in the order written.
	Lists []List
	// Ranges are the inputs drawn afresh each time.
	Ranges []Range
}

// A List is an input with the values that a table runs through.
type List struct {
	Input  *Input
	Values []string
}

// A Range is an input with the bounds that a practice problem draws between,
// in the input's own unit, both included.
type Range struct {
	Input    *Input
	Low, Top float64
	// Unit is the unit in which the bounds were written, and in which the
	// problem is set.
	Unit Unit
}

// ParseSpread sorts the pairs of a query by how many values each has. Every
// value is read, so a problem in any of them is found here.
func (c *Calculator) ParseSpread(pairs []Pair) (Spread, []*Problem) {
	s := Spread{Calculator: c}
	var problems []*Problem
	for _, p := range pairs {
		in := c.Input(p.Key)
		takesList := in != nil && (in.Kind == Numbers || in.Kind == Bundle)
		switch {
		case in == nil || takesList:
			s.Fixed = append(s.Fixed, p)
		case strings.Contains(p.Value, ".."):
			r, msg := in.readRange(p.Value)
			if msg != "" {
				problems = append(problems, Refuse(in.Name, msg))
				continue
			}
			s.Ranges = append(s.Ranges, r)
		case strings.Contains(p.Value, ","):
			list := List{Input: in}
			for item := range strings.SplitSeq(p.Value, ",") {
				if _, msg := in.Read(item); msg != "" {
					problems = append(problems, Refuse(in.Name, msg))
				}
				list.Values = append(list.Values, strings.TrimSpace(item))
			}
			s.Lists = append(s.Lists, list)
		default:
			s.Fixed = append(s.Fixed, p)
		}
	}
	_, fixed := c.Read(s.Fixed)
	problems = append(problems, fixed...)
	return s, append(problems, s.twice()...)
}

// twice refuses an input that stands among two of the three kinds, or twice
// in one.
func (s *Spread) twice() []*Problem {
	seen := make(map[string]bool)
	var problems []*Problem
	see := func(name string) {
		if seen[name] {
			problems = append(problems, Refuse(name, "given twice; give it once"))
		}
		seen[name] = true
	}
	for _, l := range s.Lists {
		see(l.Input.Name)
	}
	for _, r := range s.Ranges {
		see(r.Input.Name)
	}
	for _, p := range s.Fixed {
		if seen[p.Key] {
			problems = append(problems, Refuse(p.Key, "given twice; give it once"))
		}
	}
	return problems
}

// readRange reads "4..12A": two bounds, the unit behind the second or both.
func (in *Input) readRange(s string) (Range, string) {
	const form = "; write a range as 4..12A"
	if in.Kind != Number && in.Kind != Count || len(in.OneOf) > 0 {
		return Range{}, "cannot be drawn from a range; give one value"
	}
	low, top, _ := strings.Cut(s, "..")
	q2, msg := ParseQuantity(top)
	if msg != "" {
		return Range{}, msg + form
	}
	q1, msg := ParseQuantity(low)
	if msg != "" {
		return Range{}, msg + form
	}
	if q1.Bare {
		q1.Unit, q1.Bare = q2.Unit, q2.Bare
	}
	a, msg := readNumber(in, q1.String())
	if msg != "" {
		return Range{}, msg
	}
	b, msg := readNumber(in, q2.String())
	if msg != "" {
		return Range{}, msg
	}
	if a.Num >= b.Num {
		return Range{}, s + " does not rise" + form
	}
	unit := q2.Unit
	if q2.Bare {
		unit = mustUnit(in.Unit)
	}
	return Range{Input: in, Low: a.Num, Top: b.Num, Unit: unit}, ""
}
