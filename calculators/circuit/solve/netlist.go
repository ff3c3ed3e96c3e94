package solve

import (
	"slices"
	"strconv"
	"strings"

	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
)

// AppendNetlist writes the circuit in one state as a SPICE deck that finds the
// same operating point: relays and amplifiers as this solver found them,
// loads as sources whose current depends on their voltage.
func AppendNetlist(b []byte, n *circuit.Network, state int) []byte {
	s := newSolver(n)
	s.settle(state)
	b = append(b, "* "+oneLine(n.Title)+", state "+oneLine(n.States[state].Name)+"\n"...)
	node := s.deckNode
	for i := range s.live {
		br := &s.live[i]
		if s.open[i] || node(br.From) == node(br.To) {
			continue
		}
		name := oneLine(n.NameOf(br) + " " + br.Label())
		b = append(b, "* "+strings.TrimSpace(name)+"\n"...)
		b = s.appendDevice(b, br, strconv.Itoa(i))
	}
	if slices.ContainsFunc(s.live, func(br circuit.Branch) bool { return br.Law == circuit.Regulated }) {
		b = s.appendStart(b)
	}
	b = append(b, ".options reltol=1e-9 abstol=1e-12 vntol=1e-10 gmin=1e-18\n.op\n.end\n"...)
	return b
}

// appendStart tells the simulator where to begin its search: from 0 V it does
// not find the point at which a converter works. What it settles at is its own.
func (s *solver) appendStart(b []byte) []byte {
	for i, v := range s.volts {
		if name := s.deckNode(i); name == "n"+strconv.Itoa(i) {
			b = append(b, ".nodeset V("+name+")="+format.Exact(v)+"\n"...)
		}
	}
	return b
}

// DeckNodes are the names that the nodes of a network have in its deck, "0" for
// those that are at zero by definition.
func DeckNodes(n *circuit.Network, state int) []string {
	s := newSolver(n)
	s.settle(state)
	names := make([]string, n.Nodes)
	for i := range names {
		names[i] = s.deckNode(i)
	}
	return names
}

// deckNode names a node in a deck: nodes that no resistance parts have one name,
// and where one of them is the zero of its island that is 0.
func (s *solver) deckNode(node int) string {
	first := -1
	for i := range s.n.Nodes {
		if s.joined.root[i] != s.joined.root[node] || s.joined.offset[i] != s.joined.offset[node] {
			continue
		}
		if s.pinned[i] {
			return "0"
		}
		if first < 0 {
			first = i
		}
	}
	return "n" + strconv.Itoa(first)
}

// deckRegulated is the current of a regulated source as an expression.
func (s *solver) deckRegulated(br *circuit.Branch) string {
	v := "V(" + s.deckNode(br.From) + "," + s.deckNode(br.To) + ")"
	above := "(" + v + "+" + format.Exact(br.Volts) + ")"
	amps, least := format.Exact(br.Amps), format.Exact(leak)
	return "(" + above + " < 0 ? " + least + "*" + above + " : " + above + "/" + format.Exact(br.Ohms) + " > " + amps + " ? " + amps + "+" + least + "*(" + above + "-" +
		format.Exact(br.Amps*br.Ohms) + ") : " + above + "/" + format.Exact(br.Ohms) + ")"
}

// deckConverted is the power in W that a converter takes, as an expression.
func (s *solver) deckConverted(c *circuit.Converter) string {
	for i := range s.live {
		out := &s.live[i]
		if s.n.Of(out) == c && out.Role == circuit.Converted && !s.open[i] {
			return "(" + format.Exact(c.Idle) + "+V(" + s.deckNode(out.To) + "," + s.deckNode(out.From) + ")*" + s.deckRegulated(out) + "/" + format.Exact(c.Efficiency) + ")"
		}
	}
	return format.Exact(c.Idle)
}

// appendDevice writes one branch.
func (s *solver) appendDevice(b []byte, br *circuit.Branch, id string) []byte {
	from, to, floor := s.deckNode(br.From), s.deckNode(br.To), br.Floor
	v := "V(" + from + "," + to + ")"
	switch br.Law {
	case circuit.Resistance:
		return append(b, "R"+id+" "+from+" "+to+" "+format.Exact(br.Ohms)+"\n"...)
	case circuit.VoltageSource:
		if br.Ohms == 0 {
			return append(b, "V"+id+" "+to+" "+from+" "+format.Exact(br.Volts)+"\n"...)
		}
		inner := "s" + id
		b = append(b, "V"+id+" "+inner+" "+from+" "+format.Exact(br.Volts)+"\n"...)
		return append(b, "R"+id+" "+inner+" "+to+" "+format.Exact(br.Ohms)+"\n"...)
	case circuit.CurrentLoad:
		return append(b, "B"+id+" "+from+" "+to+" I = "+v+" >= "+format.Exact(floor)+" ? "+format.Exact(br.Amps)+" : "+
			format.Exact(br.Amps/floor)+"*"+v+"\n"...)
	case circuit.Regulated:
		return append(b, "B"+id+" "+from+" "+to+" I = "+s.deckRegulated(br)+"\n"...)
	case circuit.PowerLoad:
		if c, ok := s.n.Of(br).(*circuit.Converter); ok {
			watts := s.deckConverted(c)
			return append(b, "B"+id+" "+from+" "+to+" I = "+v+" >= "+format.Exact(floor)+" ? "+watts+"/"+v+" : "+watts+"*"+v+"/"+format.Exact(floor*floor)+"\n"...)
		}
		return append(b, "B"+id+" "+from+" "+to+" I = "+v+" >= "+format.Exact(floor)+" ? "+format.Exact(br.Watts)+"/"+v+" : "+
			format.Exact(br.Watts/(floor*floor))+"*"+v+"\n"...)
	}
	return append(b, "B"+id+" "+from+" "+to+" I = "+v+" > "+format.Exact(br.Volts)+" ? "+
		format.Exact(leak+br.Strings/br.Ohms)+"*"+v+" - "+format.Exact(br.Strings/br.Ohms*br.Volts)+" : "+format.Exact(leak)+"*"+v+"\n"...)
}

// oneLine keeps a comment of the deck on its line.
func oneLine(s string) string {
	return strings.Map(func(c rune) rune {
		if c < ' ' {
			return ' '
		}
		return c
	}, s)
}
