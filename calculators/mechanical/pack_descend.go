package mechanical

import "math"

// memory is how many steps the descent remembers.
const memory = 4

// A descent minimizes a pressing's energy by the limited-memory BFGS method
// (Nocedal and Wright, Numerical Optimization, algorithm 7.4). It keeps its
// memory between uses.
type descent struct {
	step, turn     [memory][]float64
	rho            [memory]float64
	next, grad, g2 []float64
	way            []float64
}

func newDescent(size int) *descent {
	d := &descent{}
	for i := range d.step {
		d.step[i], d.turn[i] = make([]float64, size), make([]float64, size)
	}
	d.next, d.grad, d.g2, d.way = make([]float64, size), make([]float64, size), make([]float64, size), make([]float64, size)
	return d
}

// run moves x downhill until the gradient is below enough or most evaluations
// are spent, and returns how many were.
func (d *descent) run(p *pressing, x []float64, enough float64, most int) int {
	e := p.energy(x, d.grad)
	kept, used := 0, 1
	for used < most {
		if dot(d.grad, d.grad) < enough*enough {
			break
		}
		d.direction(kept)
		slope := dot(d.way, d.grad)
		if slope >= 0 { // not downhill: forget, and go straight down
			kept = 0
			d.direction(0)
			slope = dot(d.way, d.grad)
		}
		t := 1.0
		if kept == 0 {
			t = 0.25 / p.stiff
		}
		lower, evaluations := d.search(p, x, e, slope, t, most-used)
		used += evaluations
		if lower >= e {
			if kept == 0 {
				break
			}
			kept = 0
			continue
		}
		kept = d.remember(x, kept)
		e = lower
	}
	return used
}

// search halves the step until the energy falls enough; x moves there.
func (d *descent) search(p *pressing, x []float64, e, slope, t float64, most int) (lower float64, used int) {
	for used < most && used < 20 {
		for i := range x {
			d.next[i] = x[i] + float64(t*d.way[i])
		}
		lower = p.energy(d.next, d.g2)
		used++
		if lower <= e+float64(1e-4*t*slope) {
			return lower, used
		}
		fall := float64(slope * t)
		t *= max(0.1, min(0.5, -fall/(2*(lower-e-fall))))
	}
	return e, used
}

// remember stores the step from x to next with its change of gradient, the
// latest first, and makes next the state.
func (d *descent) remember(x []float64, kept int) int {
	last := memory - 1
	s, y := d.step[last], d.turn[last]
	copy(d.step[1:], d.step[:last])
	copy(d.turn[1:], d.turn[:last])
	copy(d.rho[1:], d.rho[:last])
	sy := 0.0
	for i := range x {
		s[i], y[i] = d.next[i]-x[i], d.g2[i]-d.grad[i]
		sy += float64(s[i] * y[i])
	}
	copy(x, d.next)
	copy(d.grad, d.g2)
	d.step[0], d.turn[0] = s, y
	if sy <= 1e-14*math.Sqrt(dot(s, s)*dot(y, y)) { // no curvature to learn from
		return 0
	}
	d.rho[0] = 1 / sy
	return min(kept+1, memory)
}

// direction is the way down that the remembered steps suggest.
func (d *descent) direction(kept int) {
	var alpha [memory]float64
	for i, g := range d.grad {
		d.way[i] = -g
	}
	for k := range kept {
		alpha[k] = d.rho[k] * dot(d.step[k], d.way)
		add(d.way, -alpha[k], d.turn[k])
	}
	if kept > 0 {
		scale := 1 / (d.rho[0] * dot(d.turn[0], d.turn[0]))
		for i := range d.way {
			d.way[i] *= scale
		}
	}
	for k := kept - 1; k >= 0; k-- {
		beta := d.rho[k] * dot(d.turn[k], d.way)
		add(d.way, alpha[k]-beta, d.step[k])
	}
}

// dot is the inner product, summed in four strands so that the additions do
// not wait for each other.
func dot(a, b []float64) float64 {
	b = b[:len(a)]
	var s0, s1, s2, s3 float64
	i := 0
	for ; i+4 <= len(a); i += 4 {
		s0 += float64(a[i] * b[i])
		s1 += float64(a[i+1] * b[i+1])
		s2 += float64(a[i+2] * b[i+2])
		s3 += float64(a[i+3] * b[i+3])
	}
	for ; i < len(a); i++ {
		s0 += float64(a[i] * b[i])
	}
	return s0 + s1 + s2 + s3
}

func add(to []float64, factor float64, v []float64) {
	v = v[:len(to)]
	for i := range to {
		to[i] += float64(factor * v[i])
	}
}
