package circuit

// Marks are the numbers of a few things: parts, branches or nodes. A circuit
// has so few that looking through them is quick, and a browser fetches less
// than for a map.
type marks []int

// place is where a number stands among marks, -1 where it does not.
func (m marks) place(number int) int {
	for i, n := range m {
		if n == number {
			return i
		}
	}
	return -1
}

func (m marks) has(number int) bool { return m.place(number) >= 0 }

// add marks a number, and reports whether that is news.
func (m *marks) add(number int) bool {
	if m.has(number) {
		return false
	}
	*m = append(*m, number)
	return true
}

// with adds a number to a list. A call of it is a fifth of the code of an
// append, and there are many.
func with(list []int, number int) []int { return append(list, number) }
