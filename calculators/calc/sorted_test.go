package calc_test

import (
	"math/rand"
	"slices"
	"testing"

	"baybook/calculators/calc"
)

// TestSorted compares with the standard library's stable sort.
func TestSorted(t *testing.T) {
	rnd := rand.New(rand.NewSource(2))
	for n := range 200 {
		keys := make([]float64, n)
		for i := range keys {
			keys[i] = float64(rnd.Intn(1 + n/2))
		}
		want := make([]int, n)
		for i := range want {
			want[i] = i
		}
		slices.SortStableFunc(want, func(i, j int) int { return int(keys[i] - keys[j]) })
		if got := calc.Sorted(n, func(i, j int) bool { return keys[i] < keys[j] }); !slices.Equal(got, want) {
			t.Fatalf("%v sorted to %v, want %v", keys, got, want)
		}
		calc.SortNumbers(keys)
		if !slices.IsSorted(keys) {
			t.Fatalf("sorted to %v", keys)
		}
	}
}
