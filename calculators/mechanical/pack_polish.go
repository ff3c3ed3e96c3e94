package mechanical

import "math"

// A polishing makes a settled packing exact by the method of multipliers
// (Nocedal and Wright, Numerical Optimization, framework 17.4): the pressure
// stays, and every contact remembers what it pushes back with, until no overlap
// is left.
type polishing struct {
	pressing
	down         *descent
	x, best      []float64
	worthOfBest  float64
	round, stale int
}

func newPolishing(r, x []float64) *polishing {
	n := len(r)
	p := &polishing{pressing: pressing{r: r, wall: make([]float64, n), force: 1, stiff: 100}, down: newDescent(2*n + 1)}
	p.x, p.best = append(p.x, x...), append(p.best, x...)
	p.worthOfBest = p.worth(x)
	p.meet(x, 0.5)
	return p
}

// step is one round of pressing; false where no more is gained.
func (p *polishing) step() bool {
	const rounds, patience = 40, 6
	p.down.run(&p.pressing, p.x, 1e-11, 200)
	p.round++
	p.stale++
	if w := p.worth(p.x); w < p.worthOfBest {
		if w < p.worthOfBest*(1-1e-12) {
			p.stale = 0
		}
		copy(p.best, p.x)
		p.worthOfBest = w
	}
	p.learn(p.x)
	return p.round < rounds && p.stale < patience
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
