package draw

import (
	"math"
	"strconv"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/solve"
)

// longestLine is how many letters stand beside a symbol in one line.
const longestLine = 13

// wrap parts a text at its spaces into lines that stand beside a symbol.
func wrap(text string) []string { return wrapTo(text, longestLine) }

// wrapTo parts a text at its spaces into lines of so many letters.
func wrapTo(text string, longest int) []string {
	var lines []string
	line := ""
	for _, word := range calc.Words(text) {
		switch {
		case line == "":
			line = word
		case len([]rune(line))+1+len([]rune(word)) <= longest:
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
func (p *layouter) letters(it *item, state int) []string {
	sol := p.Solutions[state]
	n, fig := p.Network, figuresOf(sol)
	switch it.kind {
	case jointItem:
		if e := p.joint[it.node]; e >= 0 {
			return beside(p.called(e), fig.volts(sol.Volts[it.node]))
		}
		return []string{fig.volts(sol.Volts[it.node])}
	case railItem:
		return []string{p.terminal(it.node), fig.volts(sol.Volts[it.node])}
	case flagItem:
		return wrap("to " + p.terminal(it.node))
	case minusItem:
		return wrap(p.terminal(it.node))
	case linkItem:
		return wrap(it.text)
	}
	b := &n.Branches[it.branch]
	f := sol.Flows[it.branch]
	name := p.called(b.Part)
	current := fig.amps(f.Current)
	switch {
	case b.Role == circuit.Feeding:
		return beside("already there", current)
	case b.Role == circuit.Coil:
		return p.coilLetters(it, name, sol, b, f)
	case b.Role == circuit.MakeContact:
		return contactLetters(it, name, current, "87")
	case b.Role == circuit.BreakContact:
		return contactLetters(it, name, current, "87a")
	case b.Role == circuit.RemoteInput:
		return beside(name+" rem", current)
	case b.Role == circuit.Way:
		return beside(name+" "+b.Label(), current)
	case b.Role == circuit.Output:
		return beside(name+" out "+strconv.Itoa(b.Number), fig.volts(math.Abs(f.Drop)), current)
	}
	return p.partLetters(b.Part, name, current, f, sol)
}

// called is a part's name with a mark where it is judged.
func (p *layouter) called(part int) string {
	if p.Judges(part) {
		return "! " + p.Network.Name(part)
	}
	return p.Network.Name(part)
}

// partLetters labels a part that has one way through it.
func (p *layouter) partLetters(part int, name, current string, f solve.Flow, sol *solve.Solution) []string {
	fig := figuresOf(sol)
	across := fig.volts(f.Drop)
	switch e := p.Network.Parts[part].(type) {
	case *circuit.Source:
		return beside(name, fig.volts(math.Abs(f.Drop)), current)
	case *circuit.Fuse:
		lines := beside(name, format.Amps(e.Rating)+" "+e.TypeName())
		if e.Taps != "" {
			lines = join(lines, wrap("taps "+e.Taps))
		}
		return join(lines, []string{current})
	case *circuit.Switch:
		if f.Open {
			current = "open"
		}
		return beside(name, current)
	case *circuit.Wire:
		return join(wrap(name+" "+e.Color), beside(e.Size+" "+e.Run, current+" "+fig.drop(f.Drop)))
	case *circuit.Ground:
		return join(wrap(name), beside(e.Point, fig.volts(sol.Volts[e.Node("lug")])))
	case *circuit.LEDs:
		return join(wrap(name), beside(calc.Format(float64(e.Strings), 3)+" x "+calc.Format(float64(e.Count), 3)+" LED", across, current))
	case *circuit.Speaker:
		return beside(name, format.Ohms(e.Ohms), fig.watts(f.Heat))
	case *circuit.Load:
		if e.Type == "resistor" {
			return beside(name, format.Ohms(e.Ohms), across, current)
		}
	}
	return beside(name, across, current)
}

func join(lines, more []string) []string { return append(lines, more...) }

// coilLetters stand a coil's terminal numbers above and below its words.
func (p *layouter) coilLetters(it *item, name string, sol *solve.Solution, b *circuit.Branch, f solve.Flow) []string {
	top, foot := "86", "85"
	if it.flip {
		top, foot = foot, top
	}
	in := "at rest"
	if sol.Energized(p.Network, b.Part) {
		in = "pulled in"
	}
	return join([]string{top}, beside(name, in, figuresOf(sol).amps(f.Current), foot))
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
func (p *layouter) terminal(node int) string {
	n := p.Network
	for i := range n.Branches {
		b := &n.Branches[i]
		if !b.Pushes() {
			continue
		}
		name := n.NameOf(b)
		if b.Role == circuit.Output {
			name += " " + strconv.Itoa(b.Number)
		}
		switch node {
		case b.To:
			return name + "+"
		case b.From:
			return name + "−"
		}
	}
	if e := p.joint[node]; e >= 0 {
		return n.Name(e)
	}
	for i := range n.Parts {
		e := n.Parts[i].Basics()
		for _, pin := range e.Pins {
			if pin.Node != node || e.Kind == circuit.WireKind || e.Kind == circuit.BodyKind {
				continue
			}
			if e.Kind == circuit.GroundKind {
				return e.Name
			}
			return e.Name + " " + pin.Name
		}
	}
	return "node " + calc.Format(float64(node), 4)
}
