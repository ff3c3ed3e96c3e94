package calc

// A Search looks for the best of very many answers, a step at a time, each of
// a few milliseconds. After its first step there is an answer to show.
type Search interface {
	// Step goes on, and reports whether more can be gained.
	Step() (more bool)
}

// Found is the calculator's search for these values, as far as it has come; nil
// where the calculator needs none.
func (v *Values) Found() Search { return v.found }

// A Running computation has an answer, and looks for a better one where its
// calculator searches. It is for one goroutine.
type Running struct {
	values *Values
}

// Begin is Answer without waiting for the end of a search: its result is the
// first there is, and More says whether it is final.
func (c *Calculator) Begin(pairs []Pair) (*Running, *Result, []*Problem) {
	v, problems := c.Read(pairs)
	if len(problems) > 0 {
		return nil, nil, problems
	}
	if c.Search != nil {
		v.found = c.Search(v)
		v.more = v.found.Step()
	}
	r, p := c.Eval(v)
	if p != nil {
		return nil, nil, []*Problem{p}
	}
	return &Running{v}, r, nil
}

// Values are what is computed with.
func (r *Running) Values() *Values { return r.values }

// More reports whether a better answer is still looked for.
func (r *Running) More() bool { return r.values.more }

// Step looks a little further.
func (r *Running) Step() {
	if r.values.more {
		r.values.more = r.values.found.Step()
	}
}

// Result is the answer as it stands now; once there is no more to look for, it
// is the one that Answer gives.
func (r *Running) Result() *Result {
	result, _ := r.values.calculator.Eval(r.values)
	return result
}
