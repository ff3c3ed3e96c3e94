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

// A searcher looks for a good packing of radii that fall from first to last,
// the first being 1.
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
}

// search gives the best state that it finds within a fixed amount of work:
// rounds of fresh starts, the best of which is disturbed until nothing more
// is gained.
func search(r []float64) []float64 {
	n := len(r)
	s := &searcher{pressing: pressing{r: r, wall: make([]float64, n), stiff: 1}, down: newDescent(2*n + 1)}
	s.left = min(mostWork, workShare*n*n)
	s.mean = math.Sqrt(dot(r, r) / float64(n))
	s.least = math.Max(math.Sqrt(dot(r, r)), r[0]+r[1])
	best, bestWorth := make([]float64, 2*n+1), math.Inf(1)
	x, here := make([]float64, 2*n+1), make([]float64, 2*n+1)
	for s.going(bestWorth) {
		hereWorth := math.Inf(1)
		for _, start := range starts {
			if !s.going(hereWorth) {
				break
			}
			if w := s.settle(x, start(s, x), false); w < hereWorth {
				copy(here, x)
				hereWorth = w
			}
		}
		for stale := 0; stale < n && s.going(hereWorth); stale++ {
			copy(x, here)
			if w := s.settle(x, s.disturb(x, stale), true); w < hereWorth*(1-1e-7) {
				copy(here, x)
				hereWorth, stale = w, 0
			}
		}
		if hereWorth < bestWorth {
			copy(best, here)
			bestWorth = hereWorth
		}
	}
	return best
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
