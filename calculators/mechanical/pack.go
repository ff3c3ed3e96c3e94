package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// A Disc is a wire in the section of a bundle.
type Disc struct{ X, Y, R float64 }

// Pack lays discs of the given radii side by side without overlap, in the
// smallest circle that it finds, whose centre is the origin and whose radius it
// returns. The discs come back in the order of the radii; all lengths are in
// one unit of the caller's. It is a search, so a smaller circle may exist; it
// is deterministic, and neither the order nor the unit of the radii matters.
//
// Method: every disc is soft and the circle presses on all of them. The
// pressure is let off by steps, which leaves a local optimum; many starts and
// exchanges seek a good one, and the best is then made exact.
func Pack(radii []float64) ([]Disc, float64) {
	order := calc.Sorted(len(radii), func(i, j int) bool { return radii[i] > radii[j] })
	sorted := make([]float64, len(radii))
	for i, at := range order {
		sorted[i] = radii[at]
	}
	places := arrange(sorted)
	discs := make([]Disc, len(radii))
	for i, at := range order {
		discs[at] = places[i]
	}
	around := 0.0
	for _, p := range places {
		around = math.Max(around, math.Hypot(p.X, p.Y)+p.R)
	}
	return discs, around
}

// arrange packs radii that fall from first to last.
func arrange(radii []float64) []Disc {
	switch len(radii) {
	case 0:
		return nil
	case 1:
		return []Disc{{R: radii[0]}}
	case 2:
		return []Disc{{-radii[1], 0, radii[0]}, {radii[0], 0, radii[1]}}
	}
	// Equal inputs in different units differ in the last bit, and a search
	// would make two packings of that: it sees radii on a grid instead.
	const grid = 1 << 40
	r := make([]float64, len(radii))
	for i := range r {
		r[i] = math.Round(radii[i]/radii[0]*grid) / grid
	}
	best := polish(r, search(r))
	discs := make([]Disc, len(r))
	for i := range discs {
		discs[i] = Disc{best[2*i] * radii[0], best[2*i+1] * radii[0], radii[i]}
	}
	part(discs)
	return discs
}

// part moves discs apart from the origin by one factor, the least that leaves
// no overlap; discs already apart move together.
func part(discs []Disc) {
	factor := 0.0
	for i, a := range discs {
		for _, b := range discs[:i] {
			factor = math.Max(factor, (a.R+b.R)/math.Hypot(a.X-b.X, a.Y-b.Y))
		}
	}
	for i := range discs {
		discs[i].X *= factor
		discs[i].Y *= factor
	}
}
