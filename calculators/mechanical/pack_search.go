package mechanical

import "math"

// A search is bounded by its work, not by the clock, so that it always ends in
// the same place. Work is counted in visits of a pair of discs.
const (
	mostWork = 3_000_000
	// workShare is the work for each pair where that is less.
	workShare = 16_000
)

// hopeless: a state that is larger than another was at the same pressure, by
// more than this part of its softness, does not catch up.
const hopeless = 1.0

// A searcher looks for a good packing of radii in descending order, the first
// of which is 1.
type searcher struct {
	pressing
	down *descent
	seed uint64
	// mean is the root mean square radius.
	mean float64
	// least is a radius that no packing can be below.
	least float64
	// left is the work left.
	left int
	// pressed are the least radii met at each pressure.
	pressed []float64
	// x is the state at hand, here the best of this round and best that of all.
	x, here, best        []float64
	worthHere, bestWorth float64
	// begun is how many fresh starts this round has made, stale how many
	// disturbances since the last that gained something.
	begun, stale int
	// known is true where the first state to be settled is the best that is
	// known, and none is to be looked for.
	known bool
}

// newSearcher gets ready to look among radii that fall from first to last.
func newSearcher(r []float64) *searcher {
	n := len(r)
	s := &searcher{pressing: pressing{r: r, wall: make([]float64, n), stiff: 1}, down: newDescent(2*n + 1)}
	s.left = min(mostWork, workShare*n*n)
	s.mean = math.Sqrt(dot(r, r) / float64(n))
	s.least = math.Max(math.Sqrt(dot(r, r)), r[0]+r[1])
	s.x, s.here, s.best = make([]float64, 2*n+1), make([]float64, 2*n+1), make([]float64, 2*n+1)
	s.worthHere, s.bestWorth = math.Inf(1), math.Inf(1)
	if r[n-1] == r[0] && n < len(equalSeeds) {
		s.seed, s.known = uint64(equalSeeds[n]), true
	}
	return s
}

// step settles one state more, and reports whether there is more to look for
// within a fixed amount of work: rounds of fresh starts, the best of which is
// disturbed until nothing more is gained.
func (s *searcher) step() bool {
	switch {
	case s.known:
		start := starts[s.seed%uint64(len(starts))]
		s.bestWorth = s.settle(s.best, start(s, s.best), false)
		return false
	case s.begun < len(starts) && s.going(s.worthHere):
		start := starts[s.begun]
		s.begun++
		s.keep(s.settle(s.x, start(s, s.x), false), 1)
	case s.stale < len(s.r) && s.going(s.worthHere):
		copy(s.x, s.here)
		s.stale++
		if s.keep(s.settle(s.x, s.disturb(s.x, s.stale-1), true), 1-1e-7) {
			s.stale = 1
		}
	default:
		s.begun, s.stale, s.worthHere = 0, 0, math.Inf(1)
	}
	if s.worthHere < s.bestWorth {
		copy(s.best, s.here)
		s.bestWorth = s.worthHere
	}
	return s.going(s.bestWorth)
}

// keep makes the state at hand the best of the round where it is smaller than
// that by a part, and reports whether it is.
func (s *searcher) keep(worth, part float64) bool {
	if worth >= s.worthHere*part {
		return false
	}
	copy(s.here, s.x)
	s.worthHere = worth
	return true
}

// going reports whether there is work left and something to gain by it.
func (s *searcher) going(worth float64) bool { return s.left > 0 && worth > s.least*(1+1e-5) }

// softness is how far discs overlap, in mean radii, at a step of the letting
// off: at step 0 they slip past each other, at each later one overlaps are a
// tenth of what they were.
func softness(step int) float64 {
	soft := 0.3
	for range step {
		soft /= 10
	}
	return soft
}

// settle lets the pressure off from the given step on, until overlaps are
// small for the smallest disc, and returns what the state is then worth. In
// doubt, a state that stays far behind others at the same pressure is given up.
func (s *searcher) settle(x []float64, step int, doubt bool) float64 {
	n := len(s.r)
	walls := 2.5 * math.Sqrt(float64(n)) * s.mean
	last := 0.001 * s.r[n-1] / s.mean
	most := 60
	if s.r[n-1] < 0.1 { // small beside large takes longer to find its place
		most = 120
	}
	for room := 1e9; ; step++ {
		soft := softness(step)
		s.force = soft * walls
		s.meet(x, room*s.mean)
		steps := s.down.run(&s.pressing, x, 1e-3*soft*s.mean, most)
		s.left -= steps*(len(s.near)+4*n) + n*n
		if soft <= last {
			return s.worth(x)
		}
		room = 10 * soft
		for len(s.pressed) <= step {
			s.pressed = append(s.pressed, math.Inf(1))
		}
		s.pressed[step] = math.Min(s.pressed[step], x[2*n])
		if doubt && x[2*n] > s.pressed[step]*(1+hopeless*soft) {
			return math.Inf(1)
		}
	}
}

// disturb changes a settled state, two discs of different size changing places
// or one going somewhere else, and says from which step to settle it.
func (s *searcher) disturb(x []float64, k int) (step int) {
	n := len(s.r)
	i, j := int(s.random()*float64(n)), int(s.random()*float64(n))
	if k%2 == 0 && s.r[i] != s.r[j] {
		x[2*i], x[2*j] = x[2*j], x[2*i]
		x[2*i+1], x[2*j+1] = x[2*j+1], x[2*i+1]
		return 1
	}
	px, py := s.anywhere()
	x[2*i], x[2*i+1] = x[2*n]*px, x[2*n]*py
	return 1
}

// anywhere is a random place in the circle of radius 1.
func (s *searcher) anywhere() (x, y float64) {
	for {
		x, y = 2*s.random()-1, 2*s.random()-1
		if square(x, y) <= 1 {
			return x, y
		}
	}
}

// random is the next number of a splitmix64 sequence, from 0 up to 1.
func (s *searcher) random() float64 {
	s.seed += 0x9e3779b97f4a7c15
	z := s.seed
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return float64((z^z>>31)>>11) / (1 << 53)
}
