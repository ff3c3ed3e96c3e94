package draw

import (
	"math"

	"baybook/calculators/circuit"
)

// groundHigh is the room from the last line of a track to the ground rail.
const groundHigh = 24.0

// isGround reports an item with which a track ends on the ground rail: the
// ground points, or where a circuit has none the minus of its source.
func (s *strip) isGround(it *item) bool {
	if s.Network.First(circuit.GroundKind) >= 0 {
		return it.branch >= 0 && s.Network.Branches[it.branch].Kind == circuit.GroundKind
	}
	return it.kind == minusItem && it.node == s.Network.Minus()[0]
}

// toGround takes the tracks that end in a ground point down to the rail,
// where no bar stands in their way, and lets neighbors share one point.
func (s *strip) toGround() {
	for c := range s.low {
		s.rail = math.Max(s.rail, s.low[c])
	}
	s.rail += groundHigh
	before, wasCol := -1, -1
	for c := range s.count {
		t := s.tail[c]
		if t < 0 || !s.isGround(s.put[t].it) || s.barUnder(c, s.put[t].y) {
			continue
		}
		pl := &s.put[t]
		to := s.rail - pl.h
		prev := s.wireAbove(t)
		if prev >= 0 {
			s.put[prev].h += to - pl.y
		} else if to > pl.y {
			s.lead(c, pl.y, to)
		}
		pl.y = to
		if before >= 0 && wasCol == c-1 && sameEnd(s.put[before].it, pl.it) {
			pl.hidden = true
			s.share(before, c, to)
		} else {
			before = t
		}
		wasCol = c
	}
}

// sameEnd reports two items that stand for one ground point.
func sameEnd(a, b *item) bool {
	return a.branch == b.branch && a.kind == b.kind && a.node == b.node
}

// share joins a column to the bar over a ground point.
func (s *strip) share(first, col int, y float64) {
	for i := range s.bars {
		b := &s.bars[i]
		if math.Abs(b.y-y) < 0.1 && len(b.down) == 1 && b.down[0] == s.put[first].col {
			b.up = append(b.up, col)
			return
		}
	}
	c := s.put[first].col
	s.bars = append(s.bars, bar{y: y, node: s.nodeOver(s.put[first].it), up: []int{c, col}, down: []int{c}})
}

// barUnder reports a bar that crosses a column below y.
func (s *strip) barUnder(col int, y float64) bool {
	for i := range s.bars {
		if first, last := s.bars[i].reach(); s.bars[i].y > y && first <= col && col <= last {
			return true
		}
	}
	return false
}

// wireAbove is the place of the wire right above another place, -1 for none.
func (s *strip) wireAbove(at int) int {
	for i := range s.put {
		a, b := &s.put[i], &s.put[at]
		if a.col == b.col && s.isWire(a.it) && math.Abs(a.y+a.h-b.y) < 0.1 {
			return i
		}
	}
	return -1
}

// nodeOver is the node that a track has over the item on which it ends.
func (s *strip) nodeOver(it *item) int {
	if it.branch >= 0 {
		return s.Network.Branches[it.branch].From
	}
	return it.node
}
