package work

import "slices"

// A Linked is a link of a step that declares work, within its text.
type Linked struct {
	// Start and End are the link's words in the text, in bytes.
	Start, End int
	Declaration
}

// A Step is the work of one step.
type Step struct {
	// Does are its acts with what they are done to.
	Does []Declaration
	// Doubt is the verb that means several acts, nil where all is plain;
	// None is true where the step names no act at all.
	Doubt *Doing
	None  bool
	// Inner are the steps of the procedure that the step does, and Assumes what
	// that procedure takes to be so from its start.
	Inner   []Step
	Assumes []string
}

// Resolve puts what the plain words of a step say and what its links declare
// together. In a sentence with a link, only its links say what is done; what a
// link leaves out, such as the tool, is taken from the sentence's words.
func Resolve(sentences []Understood, links []Linked) Step {
	var s Step
	for i := range sentences {
		u := &sentences[i]
		var declared []Declaration
		for _, l := range links {
			if l.Start < u.Start || l.Start > u.End {
				continue
			}
			declared = append(declared, l.filled(u))
		}
		if len(declared) > 0 {
			s.Does = append(s.Does, declared...)
			continue
		}
		if len(u.Doings) > 0 && s.Doubt == nil && len(u.Doings[0].Acts) > 1 {
			s.Doubt = &u.Doings[0]
		}
		s.Does = append(s.Does, u.Declarations()...)
	}
	s.None = len(s.Does) == 0
	return s
}

// filled is the link's declaration with what it leaves out taken from the
// sentence.
func (l *Linked) filled(u *Understood) Declaration {
	d := l.Declaration
	if len(d.At) == 0 {
		d.At = u.Things
	}
	if len(d.With) == 0 {
		d.With = u.Tools
	}
	if len(d.State) == 0 {
		d.State = u.State
	}
	return d
}

// A Moment is the state of the vehicle before a step, and what is wrong there.
type Moment struct {
	// State holds what is so before the step, in the order in which it began.
	State []string
	// Misses are the needs that nothing before the step has met.
	Misses []Miss
	// Broken are the orders in it that are never given.
	Broken []Broken
	// Missing are what the procedure that the step does takes to be so, and
	// nothing has made so.
	Missing []string
}

// A Miss is a need that is not met.
type Miss struct {
	Need *Need
	By   Declaration
	// Later is the step that does what should have come first, -1 where none does.
	Later int
}

// A Broken is an order that is never given.
type Broken struct {
	Never *Never
	By    Declaration
}

// Run follows the vehicle through the steps, beginning with the states that
// hold at the start. It gives a moment for each step, and the state at the end.
func (l *Lists) Run(steps []Step, begin []string) ([]Moment, []string) {
	state := slices.Clone(begin)
	moments := make([]Moment, len(steps))
	for i := range steps {
		m := &moments[i]
		m.State = slices.Clone(state)
		if inner := steps[i].Inner; len(inner) > 0 {
			during := merged(state, l.declared(&steps[i]))
			for _, s := range steps[i].Assumes {
				if !slices.Contains(during, s) {
					m.Missing = append(m.Missing, s)
				}
			}
			before := state
			_, state = l.Run(inner, merged(during, steps[i].Assumes))
			for _, s := range before {
				if l.Is(s, "kept") {
					state = with(state, s) // a procedure puts back what it began itself
				}
			}
		}
		for _, d := range steps[i].Does {
			now := d
			now.State = merged(d.State, state)
			own := l.during(&steps[i], state)
			for k := range l.Needs {
				n := &l.Needs[k]
				if miss, ok := l.missed(n, &now, d, own, steps, i); ok && !slices.ContainsFunc(m.Misses, func(o Miss) bool { return o.Need == n }) {
					m.Misses = append(m.Misses, miss)
				}
			}
			for k := range l.Nevers {
				if n := &l.Nevers[k]; l.Meets(n.When, &now) >= 0 {
					m.Broken = append(m.Broken, Broken{n, d})
				}
			}
			state = l.after(&d, state) // what a step does first helps what it does next
		}
	}
	return moments, state
}

// during is what holds while a step is done: what was so before, and what the
// step itself declares or brings about.
func (l *Lists) during(s *Step, state []string) []string {
	list := slices.Clone(state)
	for _, d := range s.Does {
		list = merged(list, d.State)
		if e := l.Entry(d.Act); e != nil && !l.Is(d.Act, "hands-on") {
			list = merged(list, e.Sets)
		}
	}
	return list
}

// declared is what a step says to be so.
func (l *Lists) declared(s *Step) []string {
	var list []string
	for _, d := range s.Does {
		list = merged(list, d.State)
	}
	return list
}

func merged(a, b []string) []string {
	list := slices.Clip(a)
	for _, s := range b {
		list = with(list, s)
	}
	return list
}

// missed reports a need that the work has and nothing has met.
func (l *Lists) missed(n *Need, now *Declaration, d Declaration, own []string, steps []Step, at int) (Miss, bool) {
	if l.Meets(n.When, now) < 0 {
		return Miss{}, false
	}
	if len(n.Need) > 0 {
		return Miss{n, d, -1}, !l.anyIs(own, n.Need)
	}
	// An order of two steps: it is wrong where the first comes only later.
	for i := range steps {
		for _, o := range steps[i].Does {
			if l.Meets(n.First, &o) >= 0 {
				return Miss{n, d, i}, i > at
			}
		}
	}
	return Miss{}, false
}

// after is the state once work has been done.
func (l *Lists) after(d *Declaration, state []string) []string {
	now := *d
	now.State = merged(d.State, state)
	sets, clears := []string{}, []string{}
	for e, depth := l.Entry(d.Act), 0; e != nil && depth < 4; e, depth = l.Entry(e.Like), depth+1 {
		sets, clears = merged(sets, e.Sets), merged(clears, e.Clears)
	}
	for i := range l.Effects {
		if e := &l.Effects[i]; l.Meets(e.When, &now) >= 0 {
			sets, clears = merged(sets, e.Sets), merged(clears, e.Clears)
		}
	}
	left := slices.DeleteFunc(slices.Clone(state), func(s string) bool { return slices.Contains(clears, s) })
	for _, s := range sets {
		if !slices.Contains(clears, s) {
			left = with(left, s)
		}
	}
	for _, s := range d.State {
		if l.Is(s, "kept") {
			left = with(left, s) // the step itself says that it is so
		}
	}
	return left
}

// Left lists the ends that a state breaks, less those that are left on purpose.
func (l *Lists) Left(state, begin, leaves []string) []*End {
	var list []*End
	for i := range l.Ends {
		s := l.Ends[i].State
		if slices.Contains(state, s) && !slices.Contains(begin, s) && !slices.Contains(leaves, s) {
			list = append(list, &l.Ends[i])
		}
	}
	return list
}
