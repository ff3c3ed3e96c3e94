package circuit

import (
	"math"
	"strings"

	"baybook/calculators/calc"
)

// A Row is a line of a table about a circuit, its cells as text.
type Row []string

// A Table is a heading, the names of the columns, and the rows.
type Table struct {
	Heading string
	Columns Row
	Rows    []Row
}

// Tables are the study in tables: what flows in each state, what a short does
// to each wire, what each fuse leaves live, and the parts list.
func (s *Study) Tables() []Table {
	var list []Table
	for i := range s.Solutions {
		list = append(list, s.stateTable(i))
	}
	list = append(list, s.shortTable(), s.blownTable(), s.partsTable())
	var full []Table
	for _, t := range list {
		if len(t.Rows) > 0 {
			full = append(full, t)
		}
	}
	return full
}

// stateTable says what flows in a state. For a load the volts are those at
// its terminals, for everything else what is lost in it.
func (s *Study) stateTable(state int) Table {
	n := s.Network
	sol := s.Solutions[state]
	t := Table{Heading: "What flows: " + n.States[state].Name, Columns: Row{"Part", "Current", "Volts", "Heat"}}
	for _, loads := range [...]bool{true, false} {
		for i := range n.Branches {
			b := &n.Branches[i]
			f := sol.Flows[i]
			idle := !loads && math.Abs(f.Current) < 1e-6
			if n.draws(b) != loads || idle || b.Part == "damping" {
				continue // what carries nothing is not worth a line
			}
			t.Rows = append(t.Rows, Row{s.branchName(i), amps(math.Abs(f.Current)), s.across(i, f), watts(math.Abs(f.Heat))})
		}
	}
	return t
}

// branchName names a branch in a table.
func (s *Study) branchName(i int) string {
	b := &s.Network.Branches[i]
	name := s.Network.of(b).Name
	if b.Part != "" && b.Part != "supply" {
		return name + " " + b.Part
	}
	return name
}

// across is the voltage shown for a branch.
func (s *Study) across(i int, f Flow) string {
	b := &s.Network.Branches[i]
	switch {
	case s.Network.draws(b) || b.Law == Drives:
		return nodeVolts(math.Abs(f.Drop))
	}
	return volts(math.Abs(f.Drop))
}

// shortTable says what a dead short at the far end of each wire does.
func (s *Study) shortTable() Table {
	n := s.Network
	t := Table{Heading: "A dead short at the far end of a wire", Columns: Row{"Wire", "Current", "Opens within", "Wire bears"}}
	for i := range s.Shorts {
		short := &s.Shorts[i]
		opens := "none before it"
		if short.Fuse >= 0 {
			opens = n.Elements[short.Fuse].Name + ", " + seconds(short.Opens)
			if len(short.Also) > 0 {
				opens += ", perhaps " + n.names(short.Also) + " first"
			}
		}
		bears := seconds(short.Bears)
		if !short.Survives {
			bears += ": it burns"
		}
		t.Rows = append(t.Rows, Row{n.Elements[short.Wire].Name, amps(short.Amps), opens, bears})
	}
	return t
}

// blownTable says what each fuse leaves dead and live.
func (s *Study) blownTable() Table {
	n := s.Network
	t := Table{Heading: "With a fuse out", Columns: Row{"Fuse", "Dead", "Still live behind it"}}
	for _, b := range s.Blown {
		dead, live := n.names(b.Dead), "nothing"
		if dead == "" {
			dead = "nothing"
		}
		if len(b.Live) > 0 {
			live = "yes, through " + n.names(b.Live)
		}
		t.Rows = append(t.Rows, Row{n.Elements[b.Fuse].Name, dead, live})
	}
	return t
}

// partsTable is the parts list.
func (s *Study) partsTable() Table {
	t := Table{Heading: "Parts list", Columns: Row{"What", "How much", "For"}}
	for _, p := range s.Network.Parts() {
		t.Rows = append(t.Rows, Row{p.What, p.Amount, p.For})
	}
	return t
}

// StandbyText says what the parked state draws and how long the battery
// bears it, "" where no state is parked.
func (s *Study) StandbyText() string {
	b := &s.Standby
	if b.State < 0 {
		return ""
	}
	text := "Parked (" + s.Network.States[b.State].Name + "), " + amps(b.Added) + " is added to the vehicle's own " + amps(b.Standing)
	if b.Days > 0 {
		text += "; the battery lasts " + calc.FormatUnit(b.Days, 3, "d")
	}
	return text + "."
}

// Legend explains the letters and signs that stand in the drawing.
func (s *Study) Legend() []Row {
	n := s.Network
	var rows []Row
	var seen marks // a wire of each colour
	for i := range n.Elements {
		if e := &n.Elements[i]; e.Kind == Wire && !n.wears(e.Colour, seen) {
			seen.add(i)
			rows = append(rows, Row{e.Colour, colourName(e.Colour) + " wire (IEC 60757)"})
		}
	}
	for _, m := range meanings {
		for i := range n.Elements {
			if n.Elements[i].Kind == m.kind && (m.kind != Fuse || strings.HasPrefix(m.sign, "bar")) {
				rows = append(rows, Row{m.sign, m.means})
				break
			}
		}
	}
	if len(s.Judgements) > 0 {
		rows = append(rows, Row{"!", "a part that is judged"})
	}
	return rows
}

// wears reports whether one of some parts has a colour.
func (n *Network) wears(colour string, parts marks) bool {
	for _, i := range parts {
		if n.Elements[i].Colour == colour {
			return true
		}
	}
	return false
}

// meanings are the signs of the drawing by the part that brings them in
// (after IEC 60617).
var meanings = []struct {
	kind        Kind
	sign, means string
}{
	{Source, "long and short plate", "battery, the long plate positive"},
	{Fuse, "bar with a line through it", "fuse, in the colour of its body (ISO 8820-3)"},
	{Switch, "slanting line between two dots", "switch or relay contact, as it stands in the state shown"},
	{Relay, "85 86, 30 87 87a", "coil and contacts of a relay (DIN 72552), drawn in two places under one name"},
	{Connector, "arc over a bar", "one way of a connector"},
	{LEDs, "triangle with arrows", "LEDs with their resistor"},
	{Amplifier, "triangle in a box", "amplifier; circle with a wave: one of its outputs"},
	{Splice, "dot", "splice, or wires joined at one terminal"},
	{Ground, "bar with three strokes", "ground on the body; the volts are how far it is lifted"},
	{Link, "broken line with an arrow", "cable that is drawn and not computed"},
}
