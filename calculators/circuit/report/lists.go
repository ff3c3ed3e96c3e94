package report

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/list"
)

// lists are what a shop cuts, labels and orders for a circuit, each by its
// name on the command line.
var lists = []struct {
	name string
	make func(n *circuit.Network) Table
}{
	{"wires", wireTable}, {"cuts", cutTable}, {"labels", labelTable}, {"pinouts", pinoutTable}, {"parts", partsTable},
}

// ListNames are the names of the lists.
func ListNames() []string {
	var names []string
	for _, l := range lists {
		names = append(names, l.name)
	}
	return names
}

// List makes a list by its name; ok is false where there is none of it.
func List(n *circuit.Network, name string) (t Table, ok bool) {
	for _, l := range lists {
		if l.name == name {
			return l.make(n), true
		}
	}
	return Table{}, false
}

func meters(v float64) string { return calc.FormatPlaces(v, 2) + " m" }

func wireTable(n *circuit.Network) Table {
	t := Table{Heading: "Wire list", Columns: Row{"Wire", "From", "To", "Size", "Color", "Length", "Cut to", "Function"}}
	for _, w := range list.Wires(n) {
		cut := meters(w.Cut)
		if w.Vehicle {
			cut = "there already"
		}
		t.Rows = append(t.Rows, Row{w.Number, w.From, w.To, w.Size, w.Color, meters(w.Length), cut, w.Function})
	}
	return t
}

func cutTable(n *circuit.Network) Table {
	t := Table{Heading: "Cut list", Columns: Row{"Reel", "Cut to", "Wire", "From", "To"}}
	for _, reel := range list.Cuts(n) {
		for _, w := range reel.Cuts {
			t.Rows = append(t.Rows, Row{reel.Name, meters(w.Cut), w.Number, w.From, w.To})
		}
		if len(reel.Cuts) > 1 {
			t.Rows = append(t.Rows, Row{reel.Name, meters(reel.Total), "all", "", ""})
		}
	}
	return t
}

func labelTable(n *circuit.Network) Table {
	t := Table{Heading: "Labels", Columns: Row{"Label", "Wire", "End", "Long"}}
	for _, l := range list.Labels(n) {
		t.Rows = append(t.Rows, Row{l.Text, l.Wire, l.End, calc.FormatUnit(l.Length, 3, "mm")})
	}
	return t
}

func pinoutTable(n *circuit.Network) Table {
	t := Table{Heading: "Pinouts, seen from the wire side", Columns: Row{"Way", "Wires in", "Wires out", "Function"}}
	for _, p := range list.Pinouts(n) {
		for _, w := range p.Ways {
			t.Rows = append(t.Rows, Row{p.Connector + "." + w.Number, wiresOf(w.In), wiresOf(w.Out), w.Function})
		}
	}
	return t
}

// wiresOf writes the wires in one way of a connector: "W3 RDYE 16 AWG", or
// that it stays free.
func wiresOf(wires []list.Wire) string {
	var text []string
	for _, w := range wires {
		text = append(text, w.Number+" "+w.Color+" "+w.Size)
	}
	if len(text) == 0 {
		return "free"
	}
	return strings.Join(text, ", ")
}

// partsTable is the parts list.
func partsTable(n *circuit.Network) Table {
	t := Table{Heading: "Parts list", Columns: Row{"What", "How much", "For"}}
	for _, p := range list.Parts(n) {
		t.Rows = append(t.Rows, Row{p.What, p.Amount, p.For})
	}
	return t
}

// AppendCSV writes a table as comma-separated values (RFC 4180).
func AppendCSV(b []byte, t *Table) []byte {
	for _, row := range append([]Row{t.Columns}, t.Rows...) {
		for i, cell := range row {
			if i > 0 {
				b = append(b, ',')
			}
			if strings.ContainsAny(cell, ",\"\r\n") {
				cell = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
			}
			b = append(b, cell...)
		}
		b = append(b, '\r', '\n')
	}
	return b
}

// AppendListJSON writes a table as a JSON array of objects, one a row, whose
// names are the columns in lower case with underscores.
func AppendListJSON(b []byte, t *Table) []byte {
	b = append(b, '[')
	for i, row := range t.Rows {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '{')
		for k, cell := range row {
			if k > 0 {
				b = append(b, ',')
			}
			b = calc.AppendString(b, strings.ReplaceAll(strings.ToLower(t.Columns[k]), " ", "_"))
			b = append(b, ':')
			b = calc.AppendString(b, cell)
		}
		b = append(b, '}')
	}
	return append(b, ']')
}
