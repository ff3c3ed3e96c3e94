package circuit

import "strings"

// A Draft is a circuit as it is written: sections, names, keys and values as
// text. It is what a reader fills in, what is sent to the browser, and what a
// changed value is put into.
type Draft struct {
	Title   string
	Entries []Entry
	States  []StateEntry
	// Limits are the keys of the section limits.
	Limits []Key
	// Wrong lists the judgments that the drawing breaks on purpose, to show
	// a mistake.
	Wrong []string
}

// An Entry is one part as it is written.
type Entry struct {
	Kind Kind
	Name string
	Keys []Key
}

// A StateEntry is one state as it is written.
type StateEntry struct {
	Name string
	Keys []Key
}

// A Key is a key and its value, as text. A list is written with commas.
type Key struct{ Name, Value string }

// A Place is a part of a draft that a problem speaks of.
type Place uint8

const (
	WholeDraft Place = iota
	InEntry
	InState
	InLimits
	InWrong
)

// A Problem is something that keeps a draft from being a circuit.
type Problem struct {
	// In and Index say where: which entry or state, or which of Wrong.
	In    Place
	Index int
	// Key is the key that is wrong, "" for the part as a whole.
	Key string
	// OnKey is true where the key's name is wrong, not its value.
	OnKey bool
	// Message says what is wrong, Do what to do about it.
	Message, Do string
}

// get is the text of a key, "" where it is not given.
func get(keys []Key, name string) string {
	for _, k := range keys {
		if k.Name == name {
			return k.Value
		}
	}
	return ""
}

// setKey returns keys with one of them set to another value.
func setKey(keys []Key, name, value string) []Key {
	out := append([]Key(nil), keys...)
	for i := range out {
		if out[i].Name == name {
			out[i].Value = value
			return out
		}
	}
	return append(out, Key{name, value})
}

// List splits the value of a key that takes a list of names.
func List(value string) []string {
	var names []string
	for _, item := range strings.Split(value, ",") {
		if item = strings.TrimSpace(item); item != "" {
			names = append(names, item)
		}
	}
	return names
}

// Encode writes a draft as text that Decode reads back: a line for each part,
// fields divided by tabs. It holds no line break or tab of its own, for names
// and values hold none.
func (d *Draft) Encode() string {
	var b []byte
	line := func(fields ...string) {
		for i, f := range fields {
			if i > 0 {
				b = append(b, '\t')
			}
			b = append(b, f...)
		}
	}
	keys := func(keys []Key) {
		for _, k := range keys {
			b = append(b, '\t')
			b = append(b, k.Name...)
			b = append(b, '=')
			b = append(b, k.Value...)
		}
		b = append(b, '\n')
	}
	line("title", d.Title)
	b = append(b, '\n')
	for _, e := range d.Entries {
		line(class(e.Kind).Word, e.Name)
		keys(e.Keys)
	}
	for _, s := range d.States {
		line("state", s.Name)
		keys(s.Keys)
	}
	if len(d.Limits) > 0 {
		line("limits", "")
		keys(d.Limits)
	}
	if len(d.Wrong) > 0 {
		line("wrong", strings.Join(d.Wrong, ","))
		b = append(b, '\n')
	}
	return string(b)
}

// Decode reads what Encode wrote. The message is empty where it can be read;
// whether it is a circuit is for Build to say.
func Decode(s string) (*Draft, string) {
	d := &Draft{}
	for _, line := range strings.Split(s, "\n") {
		line = strings.TrimSuffix(line, "\r")
		if line == "" {
			continue
		}
		fields := strings.Split(line, "\t")
		if len(fields) < 2 {
			return nil, "a line of the circuit has no name"
		}
		keys, ok := decodeKeys(fields[2:])
		if !ok {
			return nil, "a line of the circuit has a field that is not key=value"
		}
		switch fields[0] {
		case "title":
			d.Title = fields[1]
		case "state":
			d.States = append(d.States, StateEntry{fields[1], keys})
		case "limits":
			d.Limits = append(d.Limits, keys...)
		case "wrong":
			d.Wrong = append(d.Wrong, List(fields[1])...)
		default:
			c := classNamed(fields[0])
			if c == nil {
				return nil, "a line of the circuit is of no known sort"
			}
			d.Entries = append(d.Entries, Entry{c.Kind, fields[1], keys})
		}
	}
	return d, ""
}

func decodeKeys(fields []string) ([]Key, bool) {
	var keys []Key
	for _, f := range fields {
		name, value, ok := strings.Cut(f, "=")
		if !ok {
			return nil, false
		}
		keys = append(keys, Key{name, value})
	}
	return keys, true
}
