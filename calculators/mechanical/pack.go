package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// A Packing is a search for the smallest circle around discs. It is a Search of
// package calc: it can be left after any step and taken up again. It is not safe
// for use by several goroutines.
type Packing struct {
	radii, sorted []float64
	order         []int
	// search looks among radii on a grid, polish makes its best state exact;
	// both are nil where there is nothing to look for.
	search *searcher
	polish *polishing
	done   bool
}

// A Disc is a wire in the section of a bundle.
type Disc struct{ X, Y, R float64 }

// Pack lays discs of the given radii side by side without overlap, in the
// smallest circle that it finds, whose center is the origin and whose radius it
// returns. The discs come back in the order of the radii; all lengths are in
// one unit of the caller's. It is a search, so a smaller circle may exist; it
// is deterministic, and neither the order nor the unit of the radii matters.
//
// Method: every disc is soft and the circle presses on all of them. The
// pressure is let off by steps, which leaves a local optimum; many starts and
// exchanges seek a good one, and the best is then made exact.
func Pack(radii []float64) ([]Disc, float64) {
	p := NewPacking(radii)
	for p.Step() {
	}
	return p.Discs()
}

// NewPacking starts a search; the first step gives it discs to show.
func NewPacking(radii []float64) *Packing {
	p := &Packing{radii: radii, order: calc.Sorted(len(radii), func(i, j int) bool { return radii[i] > radii[j] })}
	for _, at := range p.order {
		p.sorted = append(p.sorted, radii[at])
	}
	if len(radii) > 2 {
		// Equal inputs in different units differ in the last bit, and a search
		// would make two packings of that: it sees radii on a grid instead.
		const grid = 1 << 40
		r := make([]float64, len(radii))
		for i := range r {
			r[i] = math.Round(p.sorted[i]/p.sorted[0]*grid) / grid
		}
		p.search = newSearcher(r)
	}
	return p
}

// Step looks a little further, and reports whether more can be gained. A step
// settles one state of at most 60 discs, or presses once on the best.
func (p *Packing) Step() (more bool) {
	switch {
	case p.search == nil || p.done:
		return false
	case p.polish != nil:
		p.done = !p.polish.step()
	case !p.search.step():
		p.polish = newPolishing(p.search.r, p.search.best)
	}
	return !p.done
}

// Discs are the discs as they lie in the smallest circle found by now, in the
// order of the radii, and its radius. There are some from the first step on.
func (p *Packing) Discs() ([]Disc, float64) {
	places := p.places()
	discs := make([]Disc, len(p.radii))
	for i, at := range p.order {
		discs[at] = places[i]
	}
	around := 0.0
	for _, p := range places {
		around = math.Max(around, math.Hypot(p.X, p.Y)+p.R)
	}
	return discs, around
}

// places are the discs with radii that fall from first to last.
func (p *Packing) places() []Disc {
	radii := p.sorted
	switch len(radii) {
	case 0:
		return nil
	case 1:
		return []Disc{{R: radii[0]}}
	case 2:
		return []Disc{{-radii[1], 0, radii[0]}, {radii[0], 0, radii[1]}}
	}
	best := p.search.best
	if p.polish != nil {
		best = p.polish.best
	}
	discs := make([]Disc, len(radii))
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
