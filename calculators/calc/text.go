package calc

// AppendText writes a result for the prompt: inputs, outputs, verdict with
// its reasons, and cautions, a line each.
func AppendText(b []byte, v *Values, r *Result) []byte {
	c := r.calculator
	b = append(b, c.Title...)
	b = append(b, '\n')
	for i := range c.Inputs {
		if v.list[i].Text != "" { // optional ones may not be given
			b = appendRow(b, c.Inputs[i].Name, v.list[i].Text)
		}
	}
	b = append(b, '\n')
	for i := range c.Outputs {
		if a := r.Outputs[i]; a.Present {
			b = appendRow(b, c.Outputs[i].Name, c.Outputs[i].Format(a))
		}
	}
	b = append(b, "\nVerdict: "...)
	b = append(b, r.Verdict.String()...)
	b = append(b, '\n')
	for _, list := range [...]struct {
		head  string
		lines []string
	}{{"  - ", r.Reasons}, {"  caution: ", c.Cautions}} {
		for _, line := range list.lines {
			b = append(b, list.head...)
			b = append(b, line...)
			b = append(b, '\n')
		}
	}
	return b
}

// appendRow writes a name padded to a column, then its value.
func appendRow(b []byte, name, value string) []byte {
	b = append(b, "  "...)
	b = append(b, name...)
	for n := len(name); n < 20; n++ {
		b = append(b, ' ')
	}
	b = append(b, ' ')
	b = append(b, value...)
	return append(b, '\n')
}
