package circuit

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/intset"
)

// pins gives every part its terminals.
func (b *builder) pins() {
	for i := range b.n.Parts {
		base := b.n.Parts[i].Basics()
		b.first = intset.Append(b.first, len(b.joined))
		for _, name := range pinNames(b.n.Parts[i]) {
			base.Pins = append(base.Pins, Pin{Name: name})
			b.joined = intset.Append(b.joined, len(b.joined))
		}
	}
}

// pinNames lists the terminals of a part.
func pinNames(p Part) []string {
	var names []string
	switch p := p.(type) {
	case *Connector:
		for i := 1; i <= p.Ways; i++ {
			names = append(names, wayPin(i, ".in"), wayPin(i, ".out"))
		}
	case *Switch:
		if p.Ways == 1 {
			return class(SwitchKind).Pins
		}
		names = append(names, "in")
		for i := 1; i <= p.Ways; i++ {
			names = append(names, strconv.Itoa(i))
		}
	case *Amplifier:
		names = append(names, "+", "-", "rem")
		for i := 1; i <= p.Channels; i++ {
			names = append(names, wayPin(i, "+"), wayPin(i, "-"))
		}
	default:
		names = class(p.Basics().Kind).Pins
	}
	return names
}

// wayPin names a terminal of a way or of an output: "2.in", "1+".
func wayPin(number int, side string) string { return strconv.Itoa(number) + side }

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
	base := b.n.Parts[i].Basics()
	if base.Entry < 0 {
		return
	}
	entry := &b.draft.Entries[base.Entry]
	c := class(base.Kind)
	for _, k := range entry.Keys {
		p := c.key(k.Name)
		if p == nil {
			continue
		}
		at := Problem{In: InEntry, Index: base.Entry, Key: k.Name}
		switch {
		case p.Form == Terminal:
			b.attach(i, k, at)
		case p.Form == PartName:
			b.partName(k, at)
		}
	}
	switch p := b.n.Parts[i].(type) {
	case *Ground:
		b.join(b.first[i]+1, b.point(p.Point))
	case *Body:
		b.join(b.first[i], b.point(p.From))
		b.join(b.first[i]+1, b.point(p.To))
	case *Fuse:
		b.tap(i, p, entry)
	case *Converter:
		if !p.Isolated {
			b.join(b.first[i]+base.pinIndex("-"), b.first[i]+base.pinIndex("out-"))
		}
	}
}

// attach joins one end of a part with the terminal that it names.
func (b *builder) attach(i int, k Key, at Problem) {
	base := b.n.Parts[i].Basics()
	c := class(base.Kind)
	own, outward := 0, k.Name == "from"
	switch base.Kind {
	case WireKind:
		if k.Name == "to" {
			own = 1
		}
	case RelayKind:
		own, outward = base.pinIndex(k.Name), k.Name == "30" || k.Name == "86"
	default:
		name := c.In // what it is plugged onto feeds its inlet
		if k.Name == "to" {
			name = c.Out
		}
		if s, ok := b.n.Parts[i].(*Switch); ok && s.Ways > 1 && k.Name == "to" {
			at.OnKey, at.Message, at.Do = true, "to: "+s.Name+" has several outlets", "lead a wire from each of them: "+sayEnds(s)
			b.refuse(at)
			return
		}
		own = base.pinIndex(name)
	}
	pin, msg, do := b.resolve(k.Value, outward)
	if msg != "" {
		at.Message, at.Do = k.Name+": "+msg, do
		b.refuse(at)
		return
	}
	b.join(b.first[i]+own, pin)
	if w, ok := b.n.Parts[i].(*Wire); ok {
		w.Ends[own] = b.endAt(pin)
	}
}

// endAt is the part and the terminal to which a pin belongs.
func (b *builder) endAt(pin int) End {
	part := len(b.first) - 1
	for part > 0 && b.first[part] > pin {
		part--
	}
	return End{part, b.n.Parts[part].Basics().Pins[pin-b.first[part]].Name}
}

func (b *Base) pinIndex(name string) int {
	for i := range b.Pins {
		if b.Pins[i].Name == name {
			return i
		}
	}
	return 0
}

// partName refuses a key that names a part that there is not, or a tap of
// what is no fuse.
func (b *builder) partName(k Key, at Problem) {
	at.Message = k.Name + ": there is no part named “" + k.Value + "”"
	i := b.n.Index(k.Value)
	ok := i >= 0
	if ok && k.Name == "taps" {
		ok = b.n.Parts[i].Basics().Kind == FuseKind
		at.Message = k.Name + ": " + k.Value + " is a " + b.n.Parts[i].Basics().Word() + ", not a fuse"
	}
	if ok {
		return
	}
	at.Do = "name a part of this drawing"
	if near := calc.Nearest(k.Value, b.names()); near != "" {
		at.Do = "did you mean " + near + "?"
	}
	b.refuse(at)
}

func (b *builder) names() []string {
	var names []string
	for i := range b.n.Parts {
		names = append(names, b.n.Name(i))
	}
	return names
}

// tap puts the inlet of a fuse tap onto the feed side of its slot where the
// writer does not say which side it is on.
func (b *builder) tap(i int, tap *Fuse, entry *Entry) {
	slot := b.n.Index(tap.Taps)
	if slot >= 0 && slot != i && b.n.Parts[slot].Basics().Kind == FuseKind && !hasKey(entry.Keys, "from") {
		b.join(b.first[i], b.first[slot])
	}
}

// resolve finds the terminal that an end names. outward says that the current
// leaves the part there, as it does at the end that a wire starts from.
func (b *builder) resolve(end string, outward bool) (pin int, msg, do string) {
	end = strings.TrimSpace(end)
	if i := b.n.Index(end); i >= 0 {
		return b.bare(i, outward)
	}
	name, pinName := end, ""
	if n := len(end) - 1; n > 0 && (end[n] == '+' || end[n] == '-') {
		name, pinName = strings.TrimSpace(end[:n]), end[n:]
	}
	if i := b.n.Index(name); i >= 0 {
		return b.named(i, pinName, outward)
	}
	if before, after, ok := strings.Cut(end, "."); ok {
		if i := b.n.Index(strings.TrimSpace(before)); i >= 0 {
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
	base := b.n.Parts[i].Basics()
	if connector, ok := b.n.Parts[i].(*Connector); ok && connector.Ways == 1 {
		return b.named(i, "1", outward)
	}
	c := class(base.Kind)
	name := c.In
	if outward {
		name = c.Out
	}
	if s, ok := b.n.Parts[i].(*Switch); ok && s.Ways > 1 && outward {
		name = ""
	}
	if name == "" {
		return 0, base.Name + " is a " + base.Word() + ", whose terminal must be named", sayEnds(b.n.Parts[i])
	}
	return b.first[i] + base.pinIndex(name), "", ""
}

// named finds a terminal by its name.
func (b *builder) named(i int, name string, outward bool) (int, string, string) {
	base := b.n.Parts[i].Basics()
	if base.Kind == ConnectorKind && !strings.Contains(name, ".") {
		side := ".in"
		if outward {
			side = ".out"
		}
		name += side
	}
	if base.Kind == FuseKind || base.Kind == SwitchKind || base.Kind == DiodeKind {
		switch name {
		case "+":
			name = "in"
		case "-":
			name = "out"
		}
	}
	if base.Kind != GroundKind && base.Kind != WireKind && base.Kind != BodyKind && base.Pin(name) != nil {
		return b.first[i] + base.pinIndex(name), "", ""
	}
	return 0, "the " + base.Word() + " " + base.Name + " has no terminal “" + strings.TrimSuffix(strings.TrimSuffix(name, ".in"), ".out") + "”", sayEnds(b.n.Parts[i])
}

// sayEnds lists the ends of a part.
func sayEnds(p Part) string {
	base := p.Basics()
	switch p := p.(type) {
	case *Wire, *Link, *Body:
		return withArticle(base.Word()) + " cannot be joined along its way; put a splice there"
	case *Ground, *Splice:
		return "write " + base.Name + " alone"
	case *Connector:
		return "write " + base.Name + ".1 to " + base.Name + "." + strconv.Itoa(p.Ways)
	}
	var ends []string
	for _, pin := range base.Pins {
		if pin.Name == "+" || pin.Name == "-" {
			ends = append(ends, base.Name+pin.Name)
		} else {
			ends = append(ends, base.Name+"."+pin.Name)
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
	b.joined = intset.Append(b.joined, pin)
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
		for i := range b.n.Parts {
			body, ok := b.n.Parts[i].(*Body)
			if !ok {
				continue
			}
			p, q := index(body.From), index(body.To)
			if low := min(reach[p], reach[q]); reach[p] != reach[q] {
				reach[p], reach[q], pass = low, low, true
			}
		}
	}
	for i, p := range b.points {
		if reach[i] != i || i == 0 {
			continue
		}
		body := &Body{Base: Base{Kind: BodyKind, Name: "body to " + p.name, Entry: -1, Vehicle: true, Pins: []Pin{{Name: "from"}, {Name: "to"}}},
			From: b.points[0].name, To: p.name, Ohms: impliedBody}
		b.first = intset.Append(b.first, len(b.joined))
		b.joined = append(b.joined, len(b.joined), len(b.joined)+1)
		b.n.Parts = append(b.n.Parts, body)
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
	for i := range b.n.Parts {
		pins := b.n.Parts[i].Basics().Pins
		for p := range pins {
			r := b.root(b.first[i] + p)
			if nodes[r] < 0 {
				nodes[r] = b.n.Nodes
				b.n.Nodes++
			}
			pins[p].Node = nodes[r]
		}
	}
}
