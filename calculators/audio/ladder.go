package audio

import "math"

// Polynomials of normalized low-pass filters, constant term first: the
// response is 1/D(s) at s = j·f/fc. Butterworth by order 1 to 4, and
// Linkwitz-Riley orders 2 and 4, which are Butterworth orders 1 and 2 squared
// (Linkwitz, JAES 1976).
var (
	butterworth = [...][]float64{
		1: {1, 1},
		2: {1, math.Sqrt2, 1},
		3: {1, 2, 2, 1},
		4: {1, butterworth4, 2 + math.Sqrt2, butterworth4, 1},
	}
	linkwitzRiley = [...][]float64{
		2: {1, 2, 1},
		4: {1, 2 * math.Sqrt2, 4, 2 * math.Sqrt2, 1},
	}
)

// butterworth4 is sqrt(4 + 2·sqrt 2), the first and third coefficient of the
// fourth-order Butterworth polynomial.
var butterworth4 = math.Sqrt(4 + 2*math.Sqrt2)

// Prototype makes the element values, nearest the source first and starting
// with the series coil, of the low-pass ladder from a zero-ohm source into a
// load of 1 ohm whose response is 1/D(s). It divides the even and odd parts
// of D into each other (Cauer's continued fraction), which gives the elements
// from the load back.
func Prototype(d []float64) []float64 {
	order := len(d) - 1
	over := split(d, order%2)
	under := split(d, 1-order%2)
	elements := make([]float64, order)
	for i := range order { // the element nearest the load comes out first
		degree := order - i
		g := over[degree] / under[degree-1]
		elements[order-1-i] = g
		for k := degree; k >= 1; k-- {
			over[k] -= g * under[k-1]
		}
		over, under = under, over
	}
	return elements
}

// split keeps the terms of a polynomial whose power has a parity.
func split(d []float64, parity int) []float64 {
	kept := make([]float64, len(d))
	for i := parity; i < len(d); i += 2 {
		kept[i] = d[i]
	}
	return kept
}

// A Part is one element of a crossover, in the order from the source.
type Part struct {
	Coil   bool    // else a capacitor
	Series bool    // else across the load
	Value  float64 // henry or farad
}

// Ladder scales a prototype to a load in ohm and a frequency in Hz. A
// high-pass has a capacitor of 1/g where the low-pass has a coil of g, and
// the other way round.
func Ladder(prototype []float64, high bool, load, frequency float64) []Part {
	w := 2 * math.Pi * frequency
	parts := make([]Part, len(prototype))
	for i, g := range prototype {
		if high {
			g = 1 / g
		}
		p := Part{Series: i%2 == 0, Coil: (i%2 == 0) != high}
		if p.Coil {
			p.Value = g * load / w
		} else {
			p.Value = g / (w * load)
		}
		parts[i] = p
	}
	return parts
}

// LadderLevel is the level in dB over the load of a ladder from a zero-ohm
// source, at a frequency in Hz, by adding up voltages and currents from the
// load back.
func LadderLevel(parts []Part, load, frequency float64) float64 {
	w := 2 * math.Pi * frequency
	voltage, current := complex(1, 0), complex(1/load, 0)
	for i := len(parts) - 1; i >= 0; i-- {
		p := parts[i]
		z := complex(0, -1/(w*p.Value))
		if p.Coil {
			z = complex(0, w*p.Value)
		}
		if p.Series {
			voltage += z * current
		} else {
			current += voltage / z
		}
	}
	return -20 * math.Log10(math.Hypot(real(voltage), imag(voltage)))
}
