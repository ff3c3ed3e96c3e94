package mechanical

import (
	"math"

	"baybook/calculators/calc"
)

// starts lay discs out afresh and say from which step to settle them.
var starts = []func(*searcher, []float64) int{
	func(s *searcher, x []float64) int {
		return s.scatter(x, func(q float64) float64 { return q })
	},
	func(s *searcher, x []float64) int {
		return s.scatter(x, func(q float64) float64 { return -q })
	},
	(*searcher).columns,
	(*searcher).comb,
	func(s *searcher, x []float64) int {
		return s.scatter(x, func(float64) float64 { return 0 })
	},
}

// scatter throws the discs at random, then gives the places to them in the
// order of a key of the distance from the middle, the largest disc first.
func (s *searcher) scatter(x []float64, key func(distance float64) float64) int {
	n := len(s.r)
	around := 1.3 * math.Sqrt(float64(n)) * s.mean
	places := make([][3]float64, n)
	for i := range places {
		px, py := s.anywhere()
		places[i] = [3]float64{key(square(px, py)), around * px, around * py}
	}
	s.take(x, places)
	x[2*n] = around
	return 0
}

// take gives places to the discs in the order of each place's key.
func (s *searcher) take(x []float64, places [][3]float64) {
	order := calc.Sorted(len(places), func(i, j int) bool { return places[i][0] < places[j][0] })
	for i := range s.r {
		place := &places[order[i]]
		x[2*i], x[2*i+1] = place[1], place[2]
	}
}

// comb lays the discs out as cells of a honeycomb about a random middle, the
// largest inside; rows of equal wires often lie like that.
func (s *searcher) comb(x []float64) int {
	n := len(s.r)
	mx, my := s.random(), s.random()
	var places [][3]float64
	for row := -10; row <= 10; row++ {
		for column := -10; column <= 10; column++ {
			px := (float64(column) + float64(row&1)/2 + mx) * 2 * s.mean
			py := (float64(row) + my) * math.Sqrt(3) * s.mean
			places = append(places, [3]float64{square(px, py), px, py})
		}
	}
	s.take(x, places)
	x[2*n] = 1.2 * math.Sqrt(float64(n)) * s.mean
	return 1
}

// columns sets the discs in columns, large ones first, about the x axis. A
// large disc then has all small ones on one side of it, where they share
// the room beside it.
func (s *searcher) columns(x []float64) int {
	n := len(s.r)
	most := math.Max(2*s.r[0], 1.8*math.Sqrt(float64(n))*s.mean)
	left := 0.0
	for i := 0; i < n; {
		high, j := 0.0, i
		for ; j < n && high+2*s.r[j] <= most*(1+1e-12); j++ {
			high += 2 * s.r[j]
		}
		at := -high / 2
		for k := i; k < j; k++ {
			x[2*k], x[2*k+1] = left+float64(s.r[i]*(1+s.random()/8)), at+s.r[k]
			at += 2 * s.r[k]
		}
		left += 2 * s.r[i]
		i = j
	}
	for i := range n {
		x[2*i] -= left / 2
	}
	x[2*n] = left / 2
	return 1
}
