package work

import "slices"

// Unknown is the first name of some conditions that no entry of its kind has,
// empty where all are known.
func (l *Lists) Unknown(conditions ...[]When) string {
	for _, list := range conditions {
		for i := range list {
			for _, part := range list[i].parts() {
				for _, name := range part.names {
					if !l.Known(name, part.kinds...) {
						return name
					}
				}
			}
		}
	}
	return ""
}

// A whenPart is one list of a condition and the kinds that it may name.
type whenPart struct {
	names []string
	kinds []Kind
}

func (w *When) parts() []whenPart {
	return []whenPart{
		{w.Act, []Kind{Act}},
		{w.At, []Kind{Thing}}, {w.On, []Kind{Thing}}, {w.Reach, []Kind{Thing}}, {w.Beside, []Kind{Thing}},
		{w.With, []Kind{Tool}},
		{w.State, []Kind{State}}, {w.Also, []Kind{State}},
		{w.Without, []Kind{Act, Thing, Tool, State}},
	}
}

// Meets reports whether work meets one of the conditions, and which; -1 where
// it meets none.
func (l *Lists) Meets(list []When, d *Declaration) int {
	return slices.IndexFunc(list, func(w When) bool { return l.meets(&w, d) })
}

func (l *Lists) meets(w *When, d *Declaration) bool {
	if len(w.Act) > 0 && !l.anyIs([]string{d.Act}, w.Act) {
		return false
	}
	here := d.Things()
	if len(w.At) > 0 && !l.anyIs(here, w.At) {
		return false
	}
	if len(w.On) > 0 && !l.anyIs(d.At, w.On) {
		return false
	}
	if len(w.Reach) > 0 && !l.anyIs(l.reach(d), w.Reach) {
		return false
	}
	if len(w.Beside) > 0 && !l.beside(w, here) {
		return false
	}
	if len(w.With) > 0 && !l.anyIs(d.With, w.With) {
		return false
	}
	if len(w.State) > 0 && !l.anyIs(d.State, w.State) || len(w.Also) > 0 && !l.anyIs(d.State, w.Also) {
		return false
	}
	if len(w.Without) == 0 {
		return true
	}
	return !l.anyIs([]string{d.Act}, w.Without) && !l.anyIs(here, w.Without) &&
		!l.anyIs(d.With, w.Without) && !l.anyIs(d.State, w.Without)
}

// anyIs reports whether one of the entries has one of the names.
func (l *Lists) anyIs(ids, names []string) bool {
	for _, id := range ids {
		has := l.has[id]
		for _, n := range names {
			if has[n] {
				return true
			}
		}
	}
	return false
}

// beside reports whether a second thing has a name of Beside, beside one that
// has a name of At or On.
func (l *Lists) beside(w *When, here []string) bool {
	for _, second := range here {
		if !l.anyIs([]string{second}, w.Beside) {
			continue
		}
		names := slices.Concat(w.At, w.On)
		if len(names) == 0 {
			return true
		}
		for _, first := range here {
			if first != second && l.anyIs([]string{first}, names) {
				return true
			}
		}
	}
	return false
}

// reach is what the work touches and what lies within reach of it, less what
// the step takes back.
func (l *Lists) reach(d *Declaration) []string {
	var list []string
	for _, id := range d.Things() {
		for _, n := range l.Neighbors(id) {
			if !slices.Contains(d.Clear, n) && !slices.Contains(list, n) {
				list = append(list, n)
			}
		}
	}
	return list
}

// Fuller is a declaration with the one thing, tool or state added that makes it
// meet one of the conditions; false where no single one does.
func (l *Lists) Fuller(list []When, d Declaration) (Declaration, bool) {
	for i := range list {
		w := &list[i]
		for _, add := range []struct {
			names []string
			kind  Kind
			to    func(d *Declaration) *[]string
		}{{w.State, State, func(d *Declaration) *[]string { return &d.State }}, {w.With, Tool, func(d *Declaration) *[]string { return &d.With }},
			{w.At, Thing, func(d *Declaration) *[]string { return &d.Near }}, {w.Reach, Thing, func(d *Declaration) *[]string { return &d.Near }},
			{w.On, Thing, func(d *Declaration) *[]string { return &d.At }}} {
			for _, name := range add.names {
				fuller := d
				to := add.to(&fuller)
				*to = append(slices.Clip(*to), l.first(name, add.kind))
				if l.meets(w, &fuller) {
					return fuller, true
				}
			}
		}
	}
	return Declaration{}, false
}

// first is the first entry of a kind that has a name.
func (l *Lists) first(name string, k Kind) string {
	for _, e := range l.Of(k) {
		if l.Is(e.ID, name) {
			return e.ID
		}
	}
	return name
}
