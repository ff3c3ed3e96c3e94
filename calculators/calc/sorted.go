package calc

// Sorted gives the places 0 to n−1 in order; before reports whether what is
// at i comes before what is at j. Those of which neither does stay as they
// are. One sort for everything weighs a tenth of one for each type.
func Sorted(n int, before func(i, j int) bool) []int {
	order, spare := make([]int, n), make([]int, n)
	for i := range order {
		order[i] = i
	}
	for width := 1; width < n; width *= 2 {
		for from := 0; from < n; from += 2 * width {
			a, b := from, min(from+width, n)
			middle, end := b, min(from+2*width, n)
			for k := from; k < end; k++ {
				if a == middle || b < end && before(order[b], order[a]) {
					spare[k] = order[b]
					b++
				} else {
					spare[k] = order[a]
					a++
				}
			}
		}
		order, spare = spare, order
	}
	return order
}

// SortNumbers puts numbers in rising order.
func SortNumbers(list []float64) {
	was := append([]float64(nil), list...)
	for i, at := range Sorted(len(was), func(i, j int) bool { return was[i] < was[j] }) {
		list[i] = was[at]
	}
}
