package calc

// Sorted is a stable index sort: it returns the places 0 to n-1 in the order
// that before sets, where before reports whether item i comes ahead of item j.
// It is not generic and does not use package sort, to save wasm.
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

// SortNumbers puts numbers in ascending order.
func SortNumbers(list []float64) {
	was := append([]float64(nil), list...)
	for i, at := range Sorted(len(was), func(i, j int) bool { return was[i] < was[j] }) {
		list[i] = was[at]
	}
}
