package circuit

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// mostEntries is how many parts a circuit may have: more cannot be read as
// one drawing.
const mostEntries = 400

// A builder turns a draft into a network.
type builder struct {
	draft    *Draft
	n        *Network
	problems []Problem
	// pins are the terminals of all parts in a row; first is where a part's
	// begin; joined is the forest that unites those on one node.
	first  []int
	joined []int
	points []point
}

// A point is a place of the body, with the pin that stands for it.
type point struct {
	name string
	pin  int
}

// Build turns the draft into a network. Where it cannot, the problems say why,
// each with its place; the network is then nil.
func (d *Draft) Build() (*Network, []Problem) {
	b := &builder{draft: d, n: &Network{Title: d.Title, Wrong: d.Wrong, draft: d}}
	if len(d.Entries) > mostEntries {
		b.refuse(Problem{Message: "the circuit has " + strconv.Itoa(len(d.Entries)) + " parts; a drawing holds at most " + strconv.Itoa(mostEntries),
			Do: "divide it into several drawings"})
		return nil, b.problems
	}
	b.limits()
	for i := range d.Entries {
		b.part(i)
	}
	b.pins()
	for i := range b.n.Parts {
		b.ends(i)
	}
	b.wholeBody()
	if b.n.First(SourceKind) < 0 {
		b.refuse(Problem{Message: "the circuit has no source", Do: "add sources: with a battery and its volts"})
	}
	b.states()
	if len(b.problems) > 0 {
		return nil, b.problems
	}
	b.number()
	b.branches()
	return b.n, nil
}

func (b *builder) refuse(f Problem) { b.problems = append(b.problems, f) }

// unknownKey refuses a key, with the nearest one known.
func (b *builder) unknownKey(f Problem, where string, names []string) {
	f.OnKey = true
	f.Message = "“" + f.Key + "” is not a key of " + where
	f.Do = "use one of " + strings.Join(names, ", ")
	if len(names) == 0 {
		f.Do = "take it out; " + where + " needs none"
	}
	if near := calc.Nearest(f.Key, names); near != "" {
		f.Do = "did you mean " + near + "?"
	}
	b.refuse(f)
}

// part reads the keys of one entry. A part with a problem is kept, so that
// what refers to it is not refused too.
func (b *builder) part(i int) {
	entry := &b.draft.Entries[i]
	c := class(entry.Kind)
	part := c.new()
	base := part.Basics()
	base.Kind, base.Name, base.Entry = entry.Kind, entry.Name, i
	if msg := badName(entry.Name); msg != "" {
		b.refuse(Problem{In: InEntry, Index: i, OnKey: true, Message: msg, Do: "use letters, digits, spaces and hyphens, such as F1 or aisle lamp"})
	} else if b.n.Index(entry.Name) >= 0 {
		b.refuse(Problem{In: InEntry, Index: i, OnKey: true, Message: "two parts are named " + entry.Name, Do: "give one of them another name"})
	}
	c.each(func(p *Property) bool {
		if p.Default != "" {
			v, _ := p.read(p.Default)
			p.put(part, v)
		}
		return true
	})
	for k, given := range entry.Keys {
		at := Problem{In: InEntry, Index: i, Key: given.Name}
		p := c.key(given.Name)
		if p == nil {
			b.unknownKey(at, withArticle(c.Word), c.keyNames())
			continue
		}
		if get(entry.Keys[:k], given.Name) != "" {
			at.OnKey, at.Message, at.Do = true, "the key "+given.Name+" is given twice", "keep one of the two"
			b.refuse(at)
			continue
		}
		v, msg := p.read(given.Value)
		if msg != "" {
			at.Message, at.Do = given.Name+": "+msg, "give "+p.advice()
			b.refuse(at)
			continue
		}
		p.put(part, v)
	}
	b.complete(i, c, part)
	switch p := part.(type) {
	case *Wire:
		if !hasKey(entry.Keys, "ambient") {
			p.Ambient = b.n.Limits.Ambient
		}
		if !hasKey(entry.Keys, "temperature") {
			p.Temperature = b.n.Limits.Temperature
		}
	case *Load:
		p.multiply()
	case *Connector:
		if len(p.Each) > 0 && len(p.Each) != p.Ways {
			b.refuse(Problem{In: InEntry, Index: i, Key: "each", Message: p.Name + " has " + strconv.Itoa(p.Ways) + " ways and the resistance of " + strconv.Itoa(len(p.Each)), Do: "give one resistance for each way, or contact for all of them"})
		}
	}
	b.n.Parts = append(b.n.Parts, part)
}

// complete refuses a part that lacks what it needs or says too much.
func (b *builder) complete(i int, c *Class, part Part) {
	name := part.Basics().Name
	keys := b.draft.Entries[i].Keys
	c.each(func(p *Property) bool {
		if p.Required && !hasKey(keys, p.Name) {
			b.refuse(Problem{In: InEntry, Index: i, Message: name + " has no " + p.Name, Do: "add " + p.Name + ": " + p.advice()})
		}
		return true
	})
	ways := []string{"current", "power"}
	load, isLoad := part.(*Load)
	if isLoad {
		ways = append(ways, "ohms")
	} else if _, ok := part.(*Amplifier); !ok {
		return
	}
	given := 0
	for _, w := range ways {
		if hasKey(keys, w) {
			given++
		}
	}
	list := strings.Join(ways, ", ")
	switch {
	case given != 1:
		b.refuse(Problem{In: InEntry, Index: i, Message: name + " has " + strconv.Itoa(given) + " of " + list, Do: "say what it draws in exactly one of them"})
	case isLoad && load.Type == "resistor" && !hasKey(keys, "ohms"):
		b.refuse(Problem{In: InEntry, Index: i, Message: name + " is a resistor without ohms", Do: "give its ohms"})
	}
}

// multiply makes of what one load draws what all of them do.
func (l *Load) multiply() {
	n := float64(l.Count)
	l.Current *= n
	l.Power *= n
	l.Ohms /= n
	l.Inrush *= n
	l.Sleeps *= n
}

func hasKey(keys []Key, name string) bool {
	for _, k := range keys {
		if k.Name == name {
			return true
		}
	}
	return false
}

// badName says why a name is refused, "" where it is not.
func badName(name string) string {
	if strings.TrimSpace(name) == "" {
		return "a part has no name"
	}
	if msg := plainText(name); msg != "" {
		return msg
	}
	if holdsAny(name, ".+,=&<>\"") || strings.HasSuffix(name, "-") || strings.TrimSpace(name) != name {
		return "“" + name + "” cannot be the name of a part: full stop, comma, plus and the like stand for ends"
	}
	if len([]rune(name)) > longestName {
		return "“" + name + "” is longer than 24 letters, more than fits beside a symbol"
	}
	return ""
}

// holdsAny reports whether a text has one of some signs.
func holdsAny(text, signs string) bool {
	for i := range len(text) {
		if strings.IndexByte(signs, text[i]) >= 0 {
			return true
		}
	}
	return false
}
