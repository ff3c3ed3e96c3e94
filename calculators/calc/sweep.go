package calc

import "strings"

// A Sweep is a query that stands for more than one computation: some inputs
// are lists (a table) or ranges (a practice problem).
type Sweep struct {
	Calculator *Calculator
	// Fixed are the pairs with one value.
	Fixed []Pair
	// Lists are the inputs with several values, in the order written.
	Lists []List
	// Ranges are the inputs drawn afresh each time.
	Ranges []PracticeRange
}

// A List is an input with the values that a table runs through.
type List struct {
	Input  *Input
	Values []string
}

// A PracticeRange is an input with the bounds that a practice problem draws between,
// in the input's own unit, both included.
type PracticeRange struct {
	Input    *Input
	Low, Top float64
	// Unit is the unit in which the bounds were written, and in which the
	// problem is set.
	Unit Unit
}

// ParseSweep sorts the pairs of a query by how many values each has. Every
// value is read, so a problem in any of them is found here.
func (c *Calculator) ParseSweep(pairs []Pair) (Sweep, []*Problem) {
	s := Sweep{Calculator: c}
	var problems []*Problem
	refuse := func(input, message string) {
		if message != "" {
			problems = append(problems, NewProblem(input, message))
		}
	}
	for _, p := range pairs {
		in := c.Input(p.Key)
		takesList := in != nil && (in.Kind == Numbers || in.Kind == Bundle)
		switch {
		case in == nil || takesList:
			s.Fixed = append(s.Fixed, p)
		case strings.Contains(p.Value, ".."):
			r := PracticeRange{Input: in}
			msg := r.read(p.Value)
			refuse(in.Name, msg)
			if msg == "" {
				s.Ranges = append(s.Ranges, r)
			}
		case strings.IndexByte(p.Value, ',') >= 0:
			list := List{Input: in}
			eachItem(p.Value, func(item string) string {
				var v Value
				refuse(in.Name, in.read(item, &v))
				list.Values = append(list.Values, strings.TrimSpace(item))
				return ""
			})
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
// among lists or ranges; Read has refused one that stands twice among the
// fixed.
func (s *Sweep) twice() []*Problem {
	var seen []Pair
	var problems []*Problem
	see := func(name string, keep bool) {
		if has(seen, name) {
			problems = append(problems, NewProblem(name, "given twice; give it once"))
		}
		if keep {
			seen = append(seen, Pair{Key: name})
		}
	}
	for i := range s.Lists {
		see(s.Lists[i].Input.Name, true)
	}
	for i := range s.Ranges {
		see(s.Ranges[i].Input.Name, true)
	}
	for i := range s.Fixed {
		see(s.Fixed[i].Key, false)
	}
	return problems
}

// has reports whether a key is among pairs.
func has(pairs []Pair, key string) bool {
	for i := range pairs {
		if pairs[i].Key == key {
			return true
		}
	}
	return false
}

// read takes apart "4..12A": two bounds, the unit behind the second or both.
func (r *PracticeRange) read(s string) string {
	const form = "; write a range as 4..12A"
	in := r.Input
	if in.Kind != Number && in.Kind != Count || len(in.OneOf) > 0 {
		return "cannot be drawn from a range; give one value"
	}
	low, top, _ := strings.Cut(s, "..")
	var q1, q2 Quantity
	if msg := q2.read(top); msg != "" {
		return msg + form
	}
	if msg := q1.read(low); msg != "" {
		return msg + form
	}
	if q1.Bare {
		q1.Unit, q1.Bare = q2.Unit, q2.Bare
	}
	var a, b Value
	if msg := readNumber(in, q1.String(), &a); msg != "" {
		return msg
	}
	if msg := readNumber(in, q2.String(), &b); msg != "" {
		return msg
	}
	if a.Num >= b.Num {
		return s + " does not rise" + form
	}
	r.Low, r.Top, r.Unit = a.Num, b.Num, q2.Unit
	if q2.Bare {
		r.Unit = *mustUnit(in.Unit)
	}
	return ""
}
