package circuit

import (
	"strings"

	"baybook/calculators/calc"
)

// An Adjustment is one value of a circuit that a reader may change to see it
// solved and drawn again: a load, a length, a fuse.
type Adjustment struct {
	// Key names it in a query: "load.lamp.current".
	Key string
	// Label says it to a person: "lamp current".
	Label string
	// Value is what it is now, as it is written.
	Value string
	// Input says what is accepted.
	Input calc.Input
}

// Adjustments lists what may be changed of a circuit, in the order of its
// parts: the values that it gives, of the parts that the vehicle does not
// have already.
func (d *Draft) Adjustments() []Adjustment {
	var list []Adjustment
	for _, e := range d.Entries {
		if get(e.Keys, "vehicle") == "yes" {
			continue
		}
		c := class(e.Kind)
		c.each(func(p *Property) bool {
			if p.Live && hasKey(e.Keys, p.Name) {
				list = append(list, Adjustment{c.Word + "." + e.Name + "." + p.Name, e.Name + " " + strings.ReplaceAll(p.Name, "_", " "), get(e.Keys, p.Name), p.Input})
			}
			return true
		})
	}
	return list
}

// Change makes a draft with other values: each pair is an adjustment's key
// and its new value. The problems name the key that is not known or the value
// that is refused; the draft is usable only where there is none.
func (d *Draft) Change(pairs []calc.Pair) (*Draft, []*calc.Problem) {
	var problems []*calc.Problem
	out := *d
	out.Entries = append([]Entry(nil), d.Entries...)
	for _, pair := range pairs {
		i, p := out.find(pair.Key)
		if p == nil {
			problems = append(problems, calc.NewProblem(pair.Key, "is not a value of this circuit that can be changed; write load.name.current, wire.name.length and the like"))
			continue
		}
		if _, msg := p.read(pair.Value); msg != "" {
			problems = append(problems, calc.NewProblem(pair.Key, msg))
			continue
		}
		out.Entries[i].Keys = setKey(out.Entries[i].Keys, p.Name, strings.TrimSpace(pair.Value))
	}
	return &out, problems
}

// find finds the part and the key that "wire.W1.length" names.
func (d *Draft) find(key string) (int, *Property) {
	word, rest, _ := strings.Cut(key, ".")
	name, prop, _ := strings.Cut(rest, ".")
	c := classNamed(word)
	if c == nil {
		return 0, nil
	}
	p := c.key(prop)
	if p == nil || !p.Live {
		return 0, nil
	}
	for i, e := range d.Entries {
		if e.Kind == c.Kind && e.Name == name {
			return i, p
		}
	}
	return 0, nil
}
