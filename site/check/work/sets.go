package work

import "slices"

// Sets are a condition with its names worked out: which entries meet each of
// its parts, as numbers of Numbered. A part that is nil asks nothing. A page can
// judge by them without the lists.
type Sets struct {
	Act     []int `json:"act,omitempty"`
	Here    []int `json:"here,omitempty"`
	On      []int `json:"on,omitempty"`
	Reach   []int `json:"reach,omitempty"`
	Beside  []int `json:"beside,omitempty"`
	First   []int `json:"first,omitempty"` // what Beside stands beside
	With    []int `json:"with,omitempty"`
	State   []int `json:"state,omitempty"`
	Also    []int `json:"also,omitempty"`
	Without []int `json:"without,omitempty"`
}

// Numbered lists all entries: acts, things, tools, states. The number of an
// entry is its place.
func (l *Lists) Numbered() []*Entry {
	var all []*Entry
	for _, k := range []Kind{Act, Thing, Tool, State} {
		list := l.Of(k)
		for i := range list {
			all = append(all, &list[i])
		}
	}
	return all
}

// SetsOf works out conditions. One that nothing can meet is left out.
func (l *Lists) SetsOf(conditions []When) []Sets {
	all := l.Numbered()
	numbers := func(kinds []Kind, has func(e *Entry) bool) []int {
		var list []int
		for i, e := range all {
			if slices.Contains(kinds, e.Kind) && has(e) {
				list = append(list, i)
			}
		}
		return list
	}
	var out []Sets
	for i := range conditions {
		w, s, can := &conditions[i], Sets{}, true
		for _, part := range []struct {
			names []string
			kind  Kind
			to    *[]int
		}{{w.Act, Act, &s.Act}, {w.At, Thing, &s.Here}, {w.On, Thing, &s.On}, {w.Beside, Thing, &s.Beside}, {w.With, Tool, &s.With}, {w.State, State, &s.State}, {w.Also, State, &s.Also}} {
			if len(part.names) > 0 {
				*part.to = numbers([]Kind{part.kind}, func(e *Entry) bool { return l.anyIs([]string{e.ID}, part.names) })
				can = can && len(*part.to) > 0
			}
		}
		if len(w.Reach) > 0 {
			s.Reach = numbers([]Kind{Thing}, func(e *Entry) bool { return l.anyIs(l.Neighbors(e.ID), w.Reach) })
			can = can && len(s.Reach) > 0
		}
		if first := slices.Concat(w.At, w.On); len(w.Beside) > 0 && len(first) > 0 {
			s.First = numbers([]Kind{Thing}, func(e *Entry) bool { return l.anyIs([]string{e.ID}, first) })
		}
		if len(w.Without) > 0 {
			s.Without = numbers([]Kind{Act, Thing, Tool, State}, func(e *Entry) bool { return l.anyIs([]string{e.ID}, w.Without) })
		}
		if can {
			out = append(out, s)
		}
	}
	return out
}
