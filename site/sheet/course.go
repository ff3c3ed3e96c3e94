package sheet

import (
	"cmp"
	"slices"
	"strings"
)

// NeededBy lists the sheets that one must be learned after, as its front matter
// names them. Numbers that no sheet has are left out; a check reports them.
func (b *Book) NeededBy(s *Sheet) []*Sheet {
	var list []*Sheet
	for _, number := range s.Front.Needs {
		if n := b.Numbered(number); n != nil {
			list = append(list, n)
		}
	}
	return list
}

// Course puts the book's sheets into stages: a sheet stands one stage behind the
// last of those that it needs, and in a stage the areas keep their order on
// the cover. Jobs
// are left out. Where sheets need each other in a circle, the one that was met
// first goes first.
func (b *Book) Course() [][]*Sheet {
	stage := make(map[*Sheet]int)
	var of func(s *Sheet, above []*Sheet) int
	of = func(s *Sheet, above []*Sheet) int {
		if at, known := stage[s]; known {
			return at
		}
		if slices.Contains(above, s) {
			return -1
		}
		at := 0
		for _, n := range b.NeededBy(s) {
			at = max(at, of(n, append(above, s))+1)
		}
		stage[s] = at
		return at
	}
	var stages [][]*Sheet
	place := func(s *Sheet) int {
		at := slices.IndexFunc(b.Areas.Areas, func(a Area) bool { return a.Folder == s.Area() })
		if at < 0 {
			return len(b.Areas.Areas)
		}
		return at
	}
	ordered := slices.Clone(b.Sheets)
	slices.SortStableFunc(ordered, func(x, y *Sheet) int {
		return cmp.Or(place(x)-place(y), strings.Compare(x.Front.Number, y.Front.Number))
	})
	for _, s := range ordered {
		if s.Front.Kind == Job {
			continue
		}
		at := of(s, nil)
		for len(stages) <= at {
			stages = append(stages, nil)
		}
		stages[at] = append(stages[at], s)
	}
	return stages
}

// NeedsItself reports whether what a sheet needs leads back to it, and by which
// of the numbers that it names.
func (b *Book) NeedsItself(s *Sheet) (number string, circle bool) {
	seen := make(map[*Sheet]bool)
	var leads func(from *Sheet) bool
	leads = func(from *Sheet) bool {
		if from == s {
			return true
		}
		if seen[from] {
			return false
		}
		seen[from] = true
		return slices.ContainsFunc(b.NeededBy(from), leads)
	}
	for _, n := range s.Front.Needs {
		if first := b.Numbered(n); first != nil && leads(first) {
			return n, true
		}
	}
	return "", false
}
