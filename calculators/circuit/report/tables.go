package report

import (
	"math"
	"slices"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/judge"
	"baybook/calculators/circuit/solve"
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
// to each wire, what each fuse leaves live, and the lists that a shop works by.
func Tables(a *judge.Assessment) []Table {
	var list []Table
	for i := range a.Solutions {
		list = append(list, stateTable(a, i))
	}
	list = append(list, shortTable(a), blownTable(a))
	for _, l := range lists {
		list = append(list, l.make(a.Network))
	}
	var full []Table
	for _, t := range list {
		if len(t.Rows) > 0 {
			full = append(full, t)
		}
	}
	return full
}

// stateTable says what flows in a state; it is empty where there is no
// solution. For a load the volts are those at its terminals, for everything
// else what is lost in it. A current is negative where it flows against the
// direction in which the part is written, as in a source that takes.
func stateTable(a *judge.Assessment, state int) Table {
	n := a.Network
	sol := a.Solutions[state]
	t := Table{Heading: "What flows: " + n.States[state].Name, Columns: Row{"Part", "Current", "Volts", "Heat"}}
	if !sol.Solved() {
		return t // its numbers are where the search ended
	}
	for _, loads := range [...]bool{true, false} {
		for i := range n.Branches {
			b := &n.Branches[i]
			f := sol.Flows[i]
			idle := !loads && math.Abs(f.Current) < 1e-6
			if n.Draws(b) != loads || idle || b.Role == circuit.CoilDamping {
				continue // what carries nothing is not worth a line
			}
			t.Rows = append(t.Rows, Row{branchName(a, i), format.Amps(f.Current), across(a, i, f), format.Watts(math.Abs(f.Heat))})
		}
	}
	return t
}

// branchName names a branch in a table.
func branchName(a *judge.Assessment, i int) string {
	b := &a.Network.Branches[i]
	name := a.Network.NameOf(b)
	if b.Role != circuit.Through && b.Role != circuit.SupplyInput {
		return name + " " + b.Label()
	}
	return name
}

// across is the voltage shown for a branch.
func across(a *judge.Assessment, i int, f solve.Flow) string {
	b := &a.Network.Branches[i]
	switch {
	case a.Network.Draws(b):
		return format.NodeVolts(f.Drop)
	case b.Drives():
		return format.NodeVolts(-f.Drop)
	}
	return format.Volts(f.Drop)
}

// shortTable says what a dead short at the far end of each wire does.
func shortTable(a *judge.Assessment) Table {
	n := a.Network
	t := Table{Heading: "A dead short at the far end of a wire", Columns: Row{"Wire", "Current", "Opens within", "Wire bears"}}
	for i := range a.Shorts {
		short := &a.Shorts[i]
		opens := "none before it"
		if short.Fuse >= 0 {
			opens = n.Name(short.Fuse) + ", " + format.Seconds(short.Opens)
			if len(short.Also) > 0 {
				opens += ", perhaps " + n.Names(short.Also) + " first"
			}
		}
		bears := format.Seconds(short.Bears)
		if !short.Survives {
			bears += ": it burns"
		}
		t.Rows = append(t.Rows, Row{n.Name(short.Wire), format.Amps(short.Amps), opens, bears})
	}
	return t
}

// blownTable says what each fuse leaves dead and live.
func blownTable(a *judge.Assessment) Table {
	n := a.Network
	t := Table{Heading: "With a fuse out", Columns: Row{"Fuse", "Dead", "Still live behind it"}}
	for _, b := range a.Blown {
		dead, live := n.Names(b.Dead), "nothing"
		if dead == "" {
			dead = "nothing"
		}
		if len(b.Live) > 0 {
			live = "yes, through " + n.Names(b.Live)
		}
		t.Rows = append(t.Rows, Row{n.Name(b.Fuse), dead, live})
	}
	return t
}

// StandbyText says what the parked state draws and how long the battery lasts,
// "" where no state is parked.
func StandbyText(a *judge.Assessment) string {
	b := &a.Standby
	if b.State < 0 {
		return ""
	}
	text := "Parked (" + a.Network.States[b.State].Name + "), " + format.Amps(b.Added) + " is added to the vehicle's own " + format.Amps(b.Standing)
	if b.Days > 0 {
		text += "; the battery lasts " + calc.FormatUnit(b.Days, 3, "d")
	}
	return text + "."
}

// Legend explains the letters and signs that stand in the drawing.
func Legend(a *judge.Assessment) []Row {
	n := a.Network
	var rows []Row
	var seen []string // colors
	for i := range n.Parts {
		if w, ok := n.Parts[i].(*circuit.Wire); ok && !slices.Contains(seen, w.Color) {
			seen = append(seen, w.Color)
			rows = append(rows, Row{w.Color, circuit.ColorName(w.Color) + " wire (IEC 60757)"})
		}
	}
	for _, m := range meanings {
		if n.First(m.kind) >= 0 {
			rows = append(rows, Row{m.sign, m.means})
		}
	}
	if takesBack(a) {
		rows = append(rows, Row{"-", "before a current: against the direction in which the wire is written; before that of a source: it takes"})
	}
	if len(a.Judgments) > 0 {
		rows = append(rows, Row{"!", "a part that is judged"})
	}
	return rows
}

// meanings are the signs of the drawing by the part that brings them in
// (after IEC 60617).
var meanings = []struct {
	kind        circuit.Kind
	sign, means string
}{
	{circuit.SourceKind, "long and short plate", "battery, the long plate positive"},
	{circuit.AlternatorKind, "G in a circle", "alternator"},
	{circuit.ConverterKind, "box with a slanting line", "converter"},
	{circuit.DiodeKind, "triangle with a bar", "diode, current passes towards the bar"},
	{circuit.FuseKind, "bar with a line through it", "fuse, in the colour of its body (ISO 8820-3)"},
	{circuit.SwitchKind, "slanting line between two dots", "switch or relay contact, as it stands in the state shown"},
	{circuit.RelayKind, "85 86, 30 87 87a", "coil and contacts of a relay (DIN 72552), drawn in two places under one name"},
	{circuit.ConnectorKind, "arc over a bar", "one way of a connector"},
	{circuit.LEDsKind, "triangle with arrows", "LEDs with their resistor"},
	{circuit.AmplifierKind, "triangle in a box", "amplifier; circle with a wave: one of its outputs"},
	{circuit.SpliceKind, "dot", "splice, or wires joined at one terminal"},
	{circuit.GroundKind, "bar with three strokes", "ground on the body; the volts are how far it is lifted"},
	{circuit.LinkKind, "broken line with an arrow", "cable that is drawn and not computed"},
}

// takesBack reports whether any current flows against its written direction.
func takesBack(a *judge.Assessment) bool {
	for _, sol := range a.Solutions {
		for _, f := range sol.Flows {
			if sol.Solved() && f.Current < -0.5e-6 {
				return true
			}
		}
	}
	return false
}
