package circuit

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// pins gives every part its terminals.
func (b *builder) pins() {
	for i := range b.n.Elements {
		e := &b.n.Elements[i]
		b.first = with(b.first, len(b.joined))
		for _, name := range pinNames(e) {
			e.Pins = append(e.Pins, Pin{Name: name})
			b.joined = with(b.joined, len(b.joined))
		}
	}
}

// pinNames lists the terminals of a part.
func pinNames(e *Element) []string {
	var names []string
	switch e.Kind {
	case Connector:
		for i := 1; i <= e.Count; i++ {
			names = append(names, strconv.Itoa(i)+".in", strconv.Itoa(i)+".out")
		}
	case Amplifier:
		names = append(names, "+", "-", "rem")
		for i := 1; i <= e.Count; i++ {
			names = append(names, strconv.Itoa(i)+"+", strconv.Itoa(i)+"-")
		}
	default:
		names = class(e.Kind).Pins
	}
	return names
}

// root is the pin that stands for all those on the same node.
func (b *builder) root(pin int) int {
	for b.joined[pin] != pin {
		b.joined[pin] = b.joined[b.joined[pin]]
		pin = b.joined[pin]
	}
	return pin
}

// join puts two pins on one node; the lower number stands for both.
func (b *builder) join(p, q int) {
	p, q = b.root(p), b.root(q)
	b.joined[max(p, q)] = min(p, q)
}

// ends joins what a part says that it is attached to.
func (b *builder) ends(i int) {
	e := &b.n.Elements[i]
	if e.Entry < 0 {
		return
	}
	entry := &b.draft.Entries[e.Entry]
	c := class(e.Kind)
	for _, k := range entry.Keys {
		p := c.key(k.Name)
		if p == nil {
			continue
		}
		at := Fault{Part: InEntry, Index: e.Entry, Key: k.Name}
		switch {
		case p.Form == Terminal:
			b.attach(i, k, at)
		case p.Form == PartName:
			b.partName(k, at)
		}
	}
	switch e.Kind {
	case Ground:
		b.join(b.first[i]+1, b.point(e.Point))
	case Body:
		b.join(b.first[i], b.point(e.From))
		b.join(b.first[i]+1, b.point(e.To))
	case Fuse:
		b.tap(i, entry)
	}
}

// attach joins one end of a part with the terminal that it names.
func (b *builder) attach(i int, k Key, at Fault) {
	e := &b.n.Elements[i]
	c := class(e.Kind)
	own, outward := 0, k.Name == "from"
	if e.Kind == Wire {
		if k.Name == "to" {
			own = 1
		}
	} else {
		name := c.In // what it is plugged onto feeds its inlet
		if k.Name == "to" {
			name = c.Out
		}
		own = e.pinIndex(name)
	}
	pin, msg, do := b.resolve(k.Value, outward)
	if msg != "" {
		at.Message, at.Do = k.Name+": "+msg, do
		b.fault(at)
		return
	}
	b.join(b.first[i]+own, pin)
}

func (e *Element) pinIndex(name string) int {
	for i := range e.Pins {
		if e.Pins[i].Name == name {
			return i
		}
	}
	return 0
}

// partName refuses a key that names a part that there is not, or a tap of
// what is no fuse.
func (b *builder) partName(k Key, at Fault) {
	at.Message = k.Name + ": there is no part named “" + k.Value + "”"
	i := b.n.named(k.Value)
	ok := i >= 0
	if ok && k.Name == "taps" {
		ok = b.n.Elements[i].Kind == Fuse
		at.Message = k.Name + ": " + k.Value + " is a " + b.n.Elements[i].Word() + ", not a fuse"
	}
	if ok {
		return
	}
	at.Do = "name a part of this drawing"
	if near := calc.Nearest(k.Value, b.names()); near != "" {
		at.Do = "did you mean " + near + "?"
	}
	b.fault(at)
}

func (b *builder) names() []string {
	var names []string
	for i := range b.n.Elements {
		names = append(names, b.n.Elements[i].Name)
	}
	return names
}

// tap puts the inlet of a fuse tap onto the feed side of its slot where the
// writer does not say which side it is on.
func (b *builder) tap(i int, entry *Entry) {
	slot := b.n.named(b.n.Elements[i].Taps)
	if slot >= 0 && slot != i && b.n.Elements[slot].Kind == Fuse && !hasKey(entry.Keys, "from") {
		b.join(b.first[i], b.first[slot])
	}
}

// resolve finds the terminal that an end names. outward says that the current
// leaves the part there, as it does at the end that a wire starts from.
func (b *builder) resolve(end string, outward bool) (pin int, msg, do string) {
	end = strings.TrimSpace(end)
	if i := b.n.named(end); i >= 0 {
		return b.bare(i, outward)
	}
	name, pinName := end, ""
	if n := len(end) - 1; n > 0 && (end[n] == '+' || end[n] == '-') {
		name, pinName = strings.TrimSpace(end[:n]), end[n:]
	}
	if i := b.n.named(name); i >= 0 {
		return b.named(i, pinName, outward)
	}
	if before, after, ok := strings.Cut(end, "."); ok {
		if i := b.n.named(strings.TrimSpace(before)); i >= 0 {
			return b.named(i, strings.TrimSpace(after), outward)
		}
		name = strings.TrimSpace(before)
	}
	do = "declare it in its section, or name a part of this drawing"
	if near := calc.Nearest(name, b.names()); near != "" {
		do = "did you mean " + near + "?"
	}
	return 0, "there is no part named “" + name + "”", do
}

// bare finds the terminal that the name of a part alone means.
func (b *builder) bare(i int, outward bool) (int, string, string) {
	e := &b.n.Elements[i]
	if e.Kind == Connector && e.Count == 1 {
		return b.named(i, "1", outward)
	}
	c := class(e.Kind)
	name := c.In
	if outward {
		name = c.Out
	}
	if name == "" {
		return 0, e.Name + " is a " + e.Word() + ", whose terminal must be named", sayEnds(e)
	}
	return b.first[i] + e.pinIndex(name), "", ""
}

// named finds a terminal by its name.
func (b *builder) named(i int, name string, outward bool) (int, string, string) {
	e := &b.n.Elements[i]
	if e.Kind == Connector && !strings.Contains(name, ".") {
		side := ".in"
		if outward {
			side = ".out"
		}
		name += side
	}
	if e.Kind == Fuse || e.Kind == Switch {
		switch name {
		case "+":
			name = "in"
		case "-":
			name = "out"
		}
	}
	if e.Kind != Ground && e.Kind != Wire && e.Kind != Body && e.Pin(name) != nil {
		return b.first[i] + e.pinIndex(name), "", ""
	}
	return 0, "the " + e.Word() + " " + e.Name + " has no terminal “" + strings.TrimSuffix(strings.TrimSuffix(name, ".in"), ".out") + "”", sayEnds(e)
}

// sayEnds lists the ends of a part.
func sayEnds(e *Element) string {
	switch e.Kind {
	case Wire, Link, Body:
		return "a " + e.Word() + " cannot be joined along its way; put a splice there"
	case Ground, Splice:
		return "write " + e.Name + " alone"
	case Connector:
		return "write " + e.Name + ".1 to " + e.Name + "." + strconv.Itoa(e.Count)
	}
	var ends []string
	for _, p := range e.Pins {
		if p.Name == "+" || p.Name == "-" {
			ends = append(ends, e.Name+p.Name)
		} else {
			ends = append(ends, e.Name+"."+p.Name)
		}
	}
	return "write one of " + strings.Join(ends, ", ")
}

// point is the pin that stands for a point of the body.
func (b *builder) point(name string) int {
	for _, p := range b.points {
		if p.name == name {
			return p.pin
		}
	}
	pin := len(b.joined)
	b.joined = with(b.joined, pin)
	b.points = append(b.points, point{name, pin})
	return pin
}

// impliedBody is the resistance of the body between two points for which the
// writer gives none, common practice; it is what wire-drop takes too.
const impliedBody = 0.002

// wholeBody joins every point of the body that nothing joins with the first
// one: it is one piece of metal.
func (b *builder) wholeBody() {
	reach := make([]int, len(b.points))
	for i := range reach {
		reach[i] = i
	}
	index := func(name string) int {
		for i, p := range b.points {
			if p.name == name {
				return i
			}
		}
		return 0
	}
	for pass := true; pass; {
		pass = false
		for i := range b.n.Elements {
			e := &b.n.Elements[i]
			if e.Kind != Body {
				continue
			}
			p, q := index(e.From), index(e.To)
			if low := min(reach[p], reach[q]); reach[p] != reach[q] {
				reach[p], reach[q], pass = low, low, true
			}
		}
	}
	for i, p := range b.points {
		if reach[i] != i || i == 0 {
			continue
		}
		e := Element{Kind: Body, Name: "body to " + p.name, Entry: -1, Vehicle: true, From: b.points[0].name, To: p.name, Ohms: impliedBody,
			Pins: []Pin{{Name: "from"}, {Name: "to"}}}
		b.first = with(b.first, len(b.joined))
		b.joined = append(b.joined, len(b.joined), len(b.joined)+1)
		b.n.Elements = append(b.n.Elements, e)
		at := b.first[len(b.first)-1]
		b.join(at, b.points[0].pin)
		b.join(at+1, p.pin)
	}
}

// number numbers the nodes, in the order of the parts.
func (b *builder) number() {
	nodes := make([]int, len(b.joined))
	for i := range nodes {
		nodes[i] = -1
	}
	for i := range b.n.Elements {
		for p := range b.n.Elements[i].Pins {
			r := b.root(b.first[i] + p)
			if nodes[r] < 0 {
				nodes[r] = b.n.Nodes
				b.n.Nodes++
			}
			b.n.Elements[i].Pins[p].Node = nodes[r]
		}
	}
}
