package mechanical

import "math"

// A pressing is soft discs in a circle. Its state is a slice x: the center of
// disc i at x[2i], x[2i+1], and the radius of the circle as the last element.
type pressing struct {
	r []float64
	// near lists the pairs that may touch.
	near []contact
	// wall is each disc's offset at the circle, see contact.
	wall []float64
	// force presses the circle inwards.
	force float64
	// stiff is what an overlap of one pushes back with.
	stiff float64
}

// A contact is a pair of discs, how far apart they belong, and what is added
// to their overlap: 0 for soft discs, the remembered force of an exact one.
type contact struct {
	i, j        int
	apart, more float64
}

// meet lists the pairs that a state brings nearer than room beyond touching.
func (p *pressing) meet(x []float64, room float64) {
	p.near = p.near[:0]
	for i, ri := range p.r {
		for j := range i {
			apart := ri + p.r[j]
			dx, dy := x[2*i]-x[2*j], x[2*i+1]-x[2*j+1]
			if reach := apart + room; square(dx, dy) < reach*reach {
				p.near = append(p.near, contact{i, j, apart, 0})
			}
		}
	}
}

// energy is force × radius + ½ stiff Σ overlap², and its gradient into grad.
//
// One rounding more or less sends a search another way. So every product is
// rounded before it is summed, here and wherever a search computes: no machine
// can then fuse the two operations, and all of them find the same packing.
func (p *pressing) energy(x, grad []float64) float64 {
	clear(grad)
	sum := 0.0
	for k := range p.near {
		c := &p.near[k]
		i, j := 2*c.i, 2*c.j
		dx, dy := x[i]-x[j], x[i+1]-x[j+1]
		reach := c.apart + c.more
		d2 := square(dx, dy)
		if d2 >= reach*reach {
			continue
		}
		d := math.Sqrt(d2)
		over := reach - d
		sum += float64(over * over)
		f := p.stiff * over / max(d, 1e-12)
		fx, fy := float64(f*dx), float64(f*dy)
		grad[i] -= fx
		grad[i+1] -= fy
		grad[j] += fx
		grad[j+1] += fy
	}
	sum += p.press(x, grad)
	return float64(p.force*x[2*len(p.r)]) + float64(p.stiff*sum/2)
}

// press adds the gradient of the circle and returns the sum of the squares
// of what stands out of it.
func (p *pressing) press(x, grad []float64) float64 {
	n := len(p.r)
	sum, wall := 0.0, 0.0
	for i, r := range p.r {
		xi, yi := x[2*i], x[2*i+1]
		room := x[2*n] - r - p.wall[i]
		d2 := square(xi, yi)
		if room > 0 && d2 <= room*room {
			continue
		}
		d := math.Sqrt(d2)
		over := max(0, d-room)
		sum += float64(over * over)
		wall += over
		f := p.stiff * over / max(d, 1e-12)
		grad[2*i] += float64(f * xi)
		grad[2*i+1] += float64(f * yi)
	}
	grad[2*n] = p.force - float64(p.stiff*wall)
	return sum
}

// square is the square of the length of a vector.
func square(x, y float64) float64 { return float64(x*x) + float64(y*y) }

// worth is the radius of the circle once the discs of a state are moved apart
// by one factor so that none overlap, which says what the state is worth.
func (p *pressing) worth(x []float64) float64 {
	factor, around := 0.0, 0.0
	for i, ri := range p.r {
		for j := range i {
			s := ri + p.r[j]
			factor = max(factor, s*s/square(x[2*i]-x[2*j], x[2*i+1]-x[2*j+1]))
		}
	}
	factor = math.Sqrt(factor)
	for i, r := range p.r {
		around = max(around, float64(factor*math.Sqrt(square(x[2*i], x[2*i+1])))+r)
	}
	return around
}
