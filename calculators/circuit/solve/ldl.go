package solve

import (
	"math"

	"baybook/calculators/circuit/intset"
)

// A SparseLDL solves symmetric systems of linear equations by the factors
// L·D·Lᵀ. The pattern of its elements is that of a circuit, near to a tree, so
// that in the right order of elimination almost nothing fills in. The order
// is found once; numbers may be filled in again and again. One goroutine may
// use it at a time.
type SparseLDL struct {
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

// newSparseLDL orders n rows for the given pairs of neighbors: the row with
// the fewest neighbors left is eliminated first (minimum degree).
func newSparseLDL(n int, pairs [][2]int) *SparseLDL {
	m := &SparseLDL{n: n, order: make([]int, 0, n), place: make([]int, n), start: make([]int, n), upper: make([][]int, n)}
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
		m.place[best] = k
		m.order = intset.Append(m.order, best)
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
	m.layOut(rows)
	return m
}

// layOut gives every element that may be other than zero its place, and
// notes where each product of the elimination goes.
func (m *SparseLDL) layOut(rows [][]int) {
	next := m.n
	for k, row := range rows {
		for _, node := range row {
			m.upper[k] = insert(m.upper[k], m.place[node])
		}
		m.start[k] = next
		next += len(row)
	}
	m.values = make([]float64, next)
	for k := range m.n {
		for a, i := range m.upper[k] {
			m.targets = intset.Append(m.targets, i)
			for _, j := range m.upper[k][a+1:] {
				m.targets = intset.Append(m.targets, m.element(i, j))
			}
		}
	}
}

// element is the place of the element in row i and column j, j after i.
func (m *SparseLDL) element(i, j int) int {
	return m.start[i] + placeIn(m.upper[i], j)
}

// between is the place of the element that stands for a pair of nodes.
func (m *SparseLDL) between(p, q int) int {
	i, j := m.place[p], m.place[q]
	return m.element(min(i, j), max(i, j))
}

// clear sets every element to zero.
func (m *SparseLDL) clear() { clear(m.values) }

// factor eliminates. A pivot that has vanished is set to one: its node hangs
// on nothing, and its right-hand side is zero too.
func (m *SparseLDL) factor() {
	t := 0
	for k := range m.n {
		d := m.values[k]
		if math.Abs(d) < 1e-13 {
			d = 1
			m.values[k] = d
		}
		row := m.values[m.start[k] : m.start[k]+len(m.upper[k])]
		for a := range row {
			f := row[a] / d
			for b := a; b < len(row); b++ {
				m.values[m.targets[t]] -= f * row[b]
				t++
			}
		}
	}
}

// solve solves for a right-hand side by node, after factor; x may be rhs.
func (m *SparseLDL) solve(rhs, x []float64) {
	y := make([]float64, m.n)
	for k, node := range m.order {
		y[k] = rhs[node]
	}
	for k := range m.n {
		f := y[k] / m.values[k]
		for a, i := range m.upper[k] {
			y[i] -= f * m.values[m.start[k]+a]
		}
	}
	for k := m.n - 1; k >= 0; k-- {
		s := y[k]
		for a, i := range m.upper[k] {
			s -= m.values[m.start[k]+a] * y[i]
		}
		y[k] = s / m.values[k]
	}
	for k, node := range m.order {
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
