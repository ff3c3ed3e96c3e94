package circuit

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// draw divides “winch 40 A” into the name of a load and what it draws; all of
// the text is the name where no load has one.
func (b *builder) draw(item string) (name string, draw Draw) {
	part := -1
	for i := range b.n.Parts {
		if n := b.n.Name(i); strings.HasPrefix(item, n+" ") && (part < 0 || len(n) > len(name)) {
			part, name = i, n
		}
	}
	if part < 0 {
		return item, draw
	}
	count := 1.0
	if l, ok := b.n.Parts[part].(*Load); ok {
		count = float64(l.Count)
	}
	for _, p := range class(b.n.Parts[part].Basics().Kind).Keys[0] {
		v, msg := p.read(item[len(name):])
		if msg != "" {
			continue
		}
		switch p.Name {
		case "current":
			draw.Amps = v.Num * count
			return name, draw
		case "power":
			draw.Watts = v.Num * count
			return name, draw
		case "ohms":
			draw.Ohms = v.Num / count
			return name, draw
		}
	}
	return name, draw
}

// position divides “selector.2” into the name of a switch and its way; 0 where
// none is named.
func (b *builder) position(item string) (name string, way int) {
	if b.n.Index(item) >= 0 {
		return item, 0
	}
	name, number, _ := strings.Cut(item, ".")
	v, msg := wayNumber.Read(number)
	if msg != "" {
		return item, 0
	}
	return strings.TrimSpace(name), int(v.Num)
}

// wayNumber reads the number of a way.
var wayNumber = calc.Input{Kind: calc.Count, Min: 1, Max: 99}

// close closes a switch, or one way of it; it says what is wrong with that.
func (b *builder) close(s *State, part, way int) string {
	sw := b.n.Parts[part].(*Switch)
	switch {
	case sw.Ways == 1 && way == 0:
		s.Closed.Add(part)
	case sw.Ways == 1:
		return sw.Name + " has one contact only"
	case way == 0:
		return sw.Name + " has " + strconv.Itoa(sw.Ways) + " ways; say which is closed"
	case way < 1 || way > sw.Ways:
		return sw.Name + " has no way " + strconv.Itoa(way)
	default:
		s.Positions = append(s.Positions, Contact{part, way})
	}
	return ""
}
