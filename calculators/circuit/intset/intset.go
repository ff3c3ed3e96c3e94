// Package intset keeps small sets of numbers: indices of parts, branches or
// nodes. A circuit has so few that looking through them is quick, and a
// browser fetches less than for a map.
package intset

// A Set is the numbers that are in it, in the order in which they came.
type Set []int

// Index is where a number stands in the set, -1 where it does not.
func (s Set) Index(number int) int {
	for i, n := range s {
		if n == number {
			return i
		}
	}
	return -1
}

// Has reports whether a number is in the set.
func (s Set) Has(number int) bool { return s.Index(number) >= 0 }

// Add puts a number into the set, and reports whether it is new there.
func (s *Set) Add(number int) bool {
	if s.Has(number) {
		return false
	}
	*s = append(*s, number)
	return true
}

// Append adds a number to a list. A call to it takes a fifth of the code of an
// append in the browser's core, and there are many calls.
func Append(list []int, number int) []int { return append(list, number) }
