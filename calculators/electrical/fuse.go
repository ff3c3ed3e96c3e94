package electrical

import "baybook/calculators/calc"

// ratings are the fuse ratings in A that can be bought, smallest first.
var ratings = []float64{2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80,
	100, 125, 150, 175, 200, 225, 250, 300}

// FuseLoading is the share of a fuse's rating that a lasting load may use,
// common practice.
const FuseLoading = 0.8

// FuseFor is the smallest standard rating in A that a load in A uses to no
// more than FuseLoading; ok is false where none is large enough.
func FuseFor(load float64) (rating float64, ok bool) {
	for _, r := range ratings {
		if !calc.Under(r, load/FuseLoading) {
			return r, true
		}
	}
	return 0, false
}

// colours are the body colours of blade fuses by rating in A: type C (medium)
// first, then what only type E (high current) has, ISO 8820-3.
var colours = []struct {
	rating float64
	name   string
}{
	{2, "grey"}, {3, "violet"}, {4, "pink"}, {5, "tan"}, {7.5, "brown"}, {10, "red"},
	{15, "blue"}, {20, "yellow"}, {25, "natural"}, {30, "green"}, {35, "blue-green"}, {40, "orange"},
	{50, "red"}, {60, "blue"}, {70, "tan or brown"}, {80, "clear"},
}

// FuseColour is the colour of a blade fuse's body, "" where the rating in A
// has none.
func FuseColour(rating float64) string {
	for _, c := range colours {
		if c.rating == rating {
			return c.name
		}
	}
	return ""
}
