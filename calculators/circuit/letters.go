package circuit

import (
	"math"
	"strings"

	"baybook/calculators/calc"
)

// longestLine is how many letters stand beside a symbol in one line.
const longestLine = 13

// wrap parts a text at its spaces into lines that stand beside a symbol.
func wrap(text string) []string {
	var lines []string
	line := ""
	for _, word := range calc.Words(text) {
		switch {
		case line == "":
			line = word
		case len([]rune(line))+1+len([]rune(word)) <= longestLine:
			line += " " + word
		default:
			lines = append(lines, line)
			line = word
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// beside wraps a text and adds lines to it.
func beside(text string, lines ...string) []string { return append(wrap(text), lines...) }

// letters are the lines beside a symbol in one state. Their number does not
// depend on the state.
func (p *planter) letters(it *item, state int) []string {
	sol := p.Solutions[state]
	n := p.Network
	switch it.kind {
	case jointItem:
		if e := p.joint[it.node]; e >= 0 {
			return beside(p.called(e), nodeVolts(sol.Volts[it.node]))
		}
		return []string{nodeVolts(sol.Volts[it.node])}
	case railItem:
		return []string{p.terminal(it.node), nodeVolts(sol.Volts[it.node])}
	case flagItem:
		return wrap("to " + p.terminal(it.node))
	case minusItem:
		return wrap(p.terminal(it.node))
	case linkItem:
		return wrap(it.text)
	}
	b := &n.Branches[it.branch]
	f := sol.Flows[it.branch]
	name := p.called(b.Element)
	current := amps(math.Abs(f.Current))
	switch {
	case b.Part == "feeds":
		return beside("already there", current)
	case b.Part == "coil":
		return p.coilLetters(it, name, sol, b, f)
	case b.Part == "make":
		return contactLetters(it, name, current, "87")
	case b.Part == "break":
		return contactLetters(it, name, current, "87a")
	case b.Part == "rem":
		return beside(name+" rem", current)
	case strings.HasPrefix(b.Part, "way "):
		return beside(name+" way "+b.Part[4:], current)
	case strings.HasPrefix(b.Part, "output "):
		return beside(name+" out "+b.Part[7:], nodeVolts(math.Abs(f.Drop)), current)
	}
	return p.partLetters(b.Element, name, current, f, sol)
}

// called is a part's name with a mark where it is judged.
func (p *planter) called(element int) string {
	name := p.Network.Elements[element].Name
	for i := range p.Judgements {
		if p.Judgements[i].Element == element {
			return "! " + name
		}
	}
	return name
}

// partLetters letters a part that has one way through it.
func (p *planter) partLetters(element int, name, current string, f Flow, sol *Solution) []string {
	e := &p.Network.Elements[element]
	across := nodeVolts(f.Drop)
	switch e.Kind {
	case Source:
		return beside(name, nodeVolts(math.Abs(f.Drop)), current)
	case Fuse:
		lines := beside(name, amps(e.Rating)+" "+typeWord(e))
		if e.Taps != "" {
			lines = join(lines, wrap("taps "+e.Taps))
		}
		return join(lines, []string{current})
	case Switch:
		if f.Open {
			current = "open"
		}
		return beside(name, current)
	case Wire:
		return join(wrap(name+" "+e.Colour), beside(e.Size+" "+e.Run, current+" "+lost(f.Drop)))
	case Ground:
		return join(wrap(name), beside(e.Point, nodeVolts(sol.Volts[e.node("lug")])))
	case LEDs:
		return join(wrap(name), beside(calc.Format(float64(e.Strings), 3)+" x "+calc.Format(float64(e.Count), 3)+" LED", across, current))
	case Speaker:
		return beside(name, ohms(e.Ohms), watts(f.Heat))
	case Load:
		if e.Type == "resistor" {
			return beside(name, ohms(e.Ohms), across, current)
		}
	}
	return beside(name, across, current)
}

func join(lines, more []string) []string { return append(lines, more...) }

func typeWord(e *Element) string {
	if e.Type == "bolt-down" {
		return "bolt"
	}
	return "type " + e.Type
}

// coilLetters stand a coil's terminal numbers above and below its words.
func (p *planter) coilLetters(it *item, name string, sol *Solution, b *Branch, f Flow) []string {
	top, foot := "86", "85"
	if it.flip {
		top, foot = foot, top
	}
	in := "at rest"
	if sol.Energised[b.Element] {
		in = "pulled in"
	}
	return join([]string{top}, beside(name, in, amps(math.Abs(f.Current)), foot))
}

// contactLetters stand a contact's terminal numbers above and below its words.
func contactLetters(it *item, name, current, make string) []string {
	top, foot := "30", make
	if it.flip {
		top, foot = foot, top
	}
	return join([]string{top}, beside(name, current, foot))
}

// terminal names a node by the source terminal, splice or part that is on it.
func (p *planter) terminal(node int) string {
	n := p.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		if b.Law != Drives {
			continue
		}
		name := n.of(b).Name
		if b.Part != "" {
			name += " " + b.Part[len("output "):]
		}
		switch node {
		case b.To:
			return name + "+"
		case b.From:
			return name + "−"
		}
	}
	if e := p.joint[node]; e >= 0 {
		return n.Elements[e].Name
	}
	for i := range n.Elements {
		e := &n.Elements[i]
		for _, pin := range e.Pins {
			if pin.Node != node || e.Kind == Wire || e.Kind == Body {
				continue
			}
			if e.Kind == Ground {
				return e.Name
			}
			return e.Name + " " + pin.Name
		}
	}
	return "node " + calc.Format(float64(node), 4)
}
