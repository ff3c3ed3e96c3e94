package mechanical

import "math"

// polish makes a settled packing exact by the method of multipliers (Nocedal
// and Wright, Numerical Optimization, framework 17.4): the pressure stays, and
// every contact remembers what it pushes back with, until no overlap is left.
func polish(r, x []float64) []float64 {
	const rounds, patience = 40, 6
	n := len(r)
	p := &pressing{r: r, wall: make([]float64, n), force: 1, stiff: 100}
	down := newDescent(2*n + 1)
	best, bestWorth := append([]float64(nil), x...), p.worth(x)
	p.meet(x, 0.5)
	for round, stale := 0, 0; round < rounds && stale < patience; round++ {
		down.run(p, x, 1e-11, 200)
		stale++
		if w := p.worth(x); w < bestWorth {
			if w < bestWorth*(1-1e-12) {
				stale = 0
			}
			copy(best, x)
			bestWorth = w
		}
		p.learn(x)
	}
	return best
}

// learn remembers the force of every contact as what is added to its overlap.
func (p *pressing) learn(x []float64) {
	n := len(p.r)
	for k := range p.near {
		c := &p.near[k]
		d := math.Sqrt(square(x[2*c.i]-x[2*c.j], x[2*c.i+1]-x[2*c.j+1]))
		c.more = math.Max(0, c.more+c.apart-d)
	}
	for i, r := range p.r {
		d := math.Sqrt(square(x[2*i], x[2*i+1]))
		p.wall[i] = math.Max(0, p.wall[i]+d+r-x[2*n])
	}
}
