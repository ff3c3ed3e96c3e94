package calc

// WithDefaults is a copy of the calculator whose inputs start from other
// values, such as a shop's own prices; whose says where they come from, for
// the help: "this shop's". An input that is unknown or a value that is refused
// is a problem, and then the calculator itself comes back.
func (c *Calculator) WithDefaults(pairs []Pair, whose string) (*Calculator, []*Problem) {
	if _, problems := c.Read(pairs); len(problems) > 0 {
		return c, problems
	}
	own := *c
	own.Inputs = append([]Input(nil), c.Inputs...)
	for _, p := range pairs {
		in := own.Input(p.Key)
		in.Default = p.Value
		in.Help += " It starts at " + whose + " " + textOf(in, p.Value) + "."
		own.changed = append(own.changed, p)
	}
	return &own, nil
}

// Explicit is a query with the defaults written out that WithDefaults changed,
// so that it means the same to a calculator that does not know them.
func (c *Calculator) Explicit(pairs []Pair) []Pair {
	all := pairs
	for _, p := range c.changed {
		if !has(pairs, p.Key) {
			all = append(all[:len(all):len(all)], Pair{Key: p.Key, Value: p.Value})
		}
	}
	return all
}
