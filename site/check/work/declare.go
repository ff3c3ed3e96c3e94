package work

import (
	"slices"
	"strings"
)

// A Declaration is the work of a step: one act, and what it is done to, beside,
// with and in.
type Declaration struct {
	Act string
	// At are the things worked on, Near what is within reach of a slip, With
	// the tools and substances, State what is special now.
	At, Near, With, State []string
	// Clear are neighbors of a place that the step says are not there; By and
	// Reason say who says so and why.
	Clear      []string
	By, Reason string
}

// Things are what is worked on and what is declared near it.
func (d *Declaration) Things() []string {
	if len(d.Near) == 0 {
		return d.At
	}
	return append(slices.Clip(d.At), d.Near...)
}

// Scheme is what the destination of a link that declares work starts with.
const Scheme = "do:"

// A Fault is what is wrong with a link that declares work.
type Fault struct {
	// Word is the part at fault, as it stands in the link.
	Word string
	// Message says what is wrong, Do what to do about it.
	Message, Do string
}

// A linkKey is a key of a link: the list that its values come from, and where
// they go.
type linkKey struct {
	name string
	kind Kind
	to   func(d *Declaration) *[]string
}

// keysOf are the keys of a link, in the order in which they are written.
var keysOf = []linkKey{
	{"at", Thing, func(d *Declaration) *[]string { return &d.At }},
	{"near", Thing, func(d *Declaration) *[]string { return &d.Near }},
	{"with", Tool, func(d *Declaration) *[]string { return &d.With }},
	{"state", State, func(d *Declaration) *[]string { return &d.State }},
	{"clear", Thing, func(d *Declaration) *[]string { return &d.Clear }},
}

// Parse reads what a link declares: "drill?at=floor&with=step-bit", with or
// without do: before it. The values are closed lists.
func (l *Lists) Parse(text string) (Declaration, []Fault) {
	text = strings.TrimPrefix(text, Scheme)
	act, query, _ := strings.Cut(text, "?")
	d := Declaration{Act: act}
	faults := l.unknown(nil, act, Act)
	if query == "" {
		return d, faults
	}
	for pair := range strings.SplitSeq(query, "&") {
		name, value, ok := strings.Cut(pair, "=")
		i := slices.IndexFunc(keysOf, func(k linkKey) bool { return k.name == name })
		switch {
		case !ok || value == "":
			faults = append(faults, Fault{pair, "“" + pair + "” has no value", "write it as at=floor, several values with commas"})
		case i < 0:
			faults = append(faults, Fault{name, "“" + name + "” is not a key of a link that declares work", "use at, near, with, state or clear"})
		default:
			to := keysOf[i].to(&d)
			for id := range strings.SplitSeq(value, ",") {
				faults = l.unknown(faults, id, keysOf[i].kind)
				if !slices.Contains(*to, id) {
					*to = append(*to, id)
				}
			}
		}
	}
	return d, faults
}

// unknown adds a fault where no entry of the kind has the id.
func (l *Lists) unknown(faults []Fault, id string, k Kind) []Fault {
	e := l.Entry(id)
	switch {
	case e == nil:
		f := Fault{Word: id, Message: "“" + id + "” is not in the list of " + k.String() + "s"}
		f.Do = "use one of " + strings.Join(l.IDs(k), ", ")
		return append(faults, f)
	case e.Kind != k:
		f := Fault{Word: id, Message: "“" + id + "” is in the list of " + e.Kind.String() + "s, not of " + k.String() + "s"}
		f.Do = "write it behind " + keyOf(e.Kind)
		return append(faults, f)
	}
	return faults
}

// keyOf is the key behind which an entry of a kind is written.
func keyOf(k Kind) string {
	return [...]string{"do:", "at=", "with=", "state="}[k]
}

// String is the declaration as a link writes it, without do: before it.
func (d *Declaration) String() string {
	var b strings.Builder
	b.WriteString(d.Act)
	mark := byte('?')
	for _, k := range keysOf {
		if list := *k.to(d); len(list) > 0 {
			b.WriteByte(mark)
			b.WriteString(k.name + "=" + strings.Join(list, ","))
			mark = '&'
		}
	}
	return b.String()
}

// ParseAll reads several declarations, set apart by semicolons.
func (l *Lists) ParseAll(text string) ([]Declaration, []Fault) {
	var list []Declaration
	var faults []Fault
	for one := range strings.SplitSeq(text, ";") {
		if one = strings.TrimSpace(one); one == "" {
			continue
		}
		d, wrong := l.Parse(one)
		list, faults = append(list, d), append(faults, wrong...)
	}
	return list, faults
}
