package render

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
)

// circuitKeys writes a table of keys for each section of a circuit.
func circuitKeys() string {
	var b strings.Builder
	heads := []string{"Key", "What it is", "In", "If left out"}
	for _, c := range circuit.Classes() {
		var rows [][]string
		for _, list := range c.Keys {
			for i := range list {
				rows = append(rows, keyRow(&list[i].Input, list[i].Required))
			}
		}
		b.WriteString(`<h3 id="keys-` + escape(c.Section) + `">` + escape(c.Section) + `</h3><p>` + escape(c.Doc) + `</p>`)
		b.WriteString(tableMarkup("Keys of a "+c.Word, heads, rows))
	}
	var states, limits [][]string
	for _, k := range circuit.StateKeys() {
		states = append(states, []string{k.Name, k.Help})
	}
	for _, in := range circuit.LimitKeys() {
		limits = append(limits, keyRow(&in, false))
	}
	b.WriteString(`<h3 id="keys-states">states</h3>` + tableMarkup("Keys of a state", heads[:2], states))
	b.WriteString(`<h3 id="keys-limits">limits</h3>` + tableMarkup("Keys of limits", heads, limits))
	return b.String()
}

// keyRow is a row about one key.
func keyRow(in *calc.Input, required bool) []string {
	takes := calc.ShownUnit(in.Unit)
	if len(in.Words) > 0 {
		takes = strings.Join(in.Words, ", ")
	}
	missing := in.Default
	if required {
		missing = "refused"
	}
	return []string{in.Name, in.Help, takes, missing}
}
