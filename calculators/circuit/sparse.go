package circuit

import (
	"math"
)

// A lattice solves symmetric systems whose pattern is that of a circuit:
// near to a tree, so that with its rows in a good order almost nothing fills
// in. The order is found once, numbers are put in as often as one likes.
type lattice struct {
	n     int
	order []int // row eliminated k-th → node
	place []int // node → when its row is eliminated
	// values holds the n diagonal elements, then those right of it, row by row.
	values []float64
	start  []int   // where a row's elements right of the diagonal begin
	upper  [][]int // their columns
	// targets says, in the order of elimination, which element each product
	// is taken from.
	targets []int
}

// newLattice orders n rows for the given pairs of neighbours: the row with
// the fewest neighbours left is eliminated first (minimum degree).
func newLattice(n int, pairs [][2]int) *lattice {
	l := &lattice{n: n, order: make([]int, 0, n), place: make([]int, n), start: make([]int, n), upper: make([][]int, n)}
	near := make([][]int, n)
	for _, p := range pairs {
		if p[0] != p[1] {
			near[p[0]] = insert(near[p[0]], p[1])
			near[p[1]] = insert(near[p[1]], p[0])
		}
	}
	done := make([]bool, n)
	rows := make([][]int, n)
	for k := range n {
		best := -1
		for i := range n {
			if !done[i] && (best < 0 || len(near[i]) < len(near[best])) {
				best = i
			}
		}
		done[best] = true
		l.place[best] = k
		l.order = with(l.order, best)
		rows[k] = near[best]
		for _, i := range near[best] {
			near[i] = without(near[i], best)
			for _, j := range near[best] {
				if i != j {
					near[i] = insert(near[i], j)
				}
			}
		}
	}
	l.layOut(rows)
	return l
}

// layOut gives every element that may be other than zero its place, and
// notes where each product of the elimination goes.
func (l *lattice) layOut(rows [][]int) {
	next := l.n
	for k, row := range rows {
		for _, node := range row {
			l.upper[k] = insert(l.upper[k], l.place[node])
		}
		l.start[k] = next
		next += len(row)
	}
	l.values = make([]float64, next)
	for k := range l.n {
		for a, i := range l.upper[k] {
			l.targets = with(l.targets, i)
			for _, j := range l.upper[k][a+1:] {
				l.targets = with(l.targets, l.element(i, j))
			}
		}
	}
}

// element is the place of the element in row i and column j, j after i.
func (l *lattice) element(i, j int) int {
	return l.start[i] + placeIn(l.upper[i], j)
}

// between is the place of the element that stands for a pair of nodes.
func (l *lattice) between(p, q int) int {
	i, j := l.place[p], l.place[q]
	return l.element(min(i, j), max(i, j))
}

// clear sets every element to zero.
func (l *lattice) clear() { clear(l.values) }

// factor eliminates. A pivot that has vanished is set to one: its node hangs
// on nothing, and its right-hand side is zero too.
func (l *lattice) factor() {
	t := 0
	for k := range l.n {
		d := l.values[k]
		if math.Abs(d) < 1e-13 {
			d = 1
			l.values[k] = d
		}
		row := l.values[l.start[k] : l.start[k]+len(l.upper[k])]
		for a := range row {
			f := row[a] / d
			for b := a; b < len(row); b++ {
				l.values[l.targets[t]] -= f * row[b]
				t++
			}
		}
	}
}

// solve solves for a right-hand side by node, after factor; x may be rhs.
func (l *lattice) solve(rhs, x []float64) {
	y := make([]float64, l.n)
	for k, node := range l.order {
		y[k] = rhs[node]
	}
	for k := range l.n {
		f := y[k] / l.values[k]
		for a, i := range l.upper[k] {
			y[i] -= f * l.values[l.start[k]+a]
		}
	}
	for k := l.n - 1; k >= 0; k-- {
		s := y[k]
		for a, i := range l.upper[k] {
			s -= l.values[l.start[k]+a] * y[i]
		}
		y[k] = s / l.values[k]
	}
	for k, node := range l.order {
		x[node] = y[k]
	}
}

// placeIn is where v is in a sorted list, or would be.
func placeIn(list []int, v int) int {
	low, high := 0, len(list)
	for low < high {
		if middle := (low + high) / 2; list[middle] < v {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

// insert adds v to a sorted list unless it holds it.
func insert(list []int, v int) []int {
	at := placeIn(list, v)
	if at < len(list) && list[at] == v {
		return list
	}
	list = append(list, v)
	copy(list[at+1:], list[at:])
	list[at] = v
	return list
}

// without takes v out of a sorted list.
func without(list []int, v int) []int {
	if at := placeIn(list, v); at < len(list) && list[at] == v {
		return append(list[:at], list[at+1:]...)
	}
	return list
}
