package calc

import (
	"strconv"
	"strings"
)

// AppendJSON writes a result as one JSON object: calculator, inputs, outputs,
// verdict, reasons, cautions. Numbers are in the units of the calculator's
// list, at full precision; an absent output is left out.
func AppendJSON(b []byte, v *Values, r *Result) []byte {
	c := r.calculator
	b = append(b, `{"calculator":`...)
	b = AppendString(b, c.Name)
	b = append(b, `,"inputs":{`...)
	some := false
	for i := range c.Inputs {
		if v.list[i].Text == "" { // optional, and not given
			continue
		}
		b = appendKey(b, some, c.Inputs[i].Name)
		b = appendInput(b, &c.Inputs[i], v.list[i])
		some = true
	}
	b = append(b, `},"outputs":{`...)
	some = false
	for i := range c.Outputs {
		if a := r.Outputs[i]; a.Present {
			b = appendKey(b, some, c.Outputs[i].Name)
			b = appendAnswer(b, &c.Outputs[i], a)
			some = true
		}
	}
	b = append(b, `},"verdict":`...)
	b = AppendString(b, r.Verdict.String())
	b = append(b, `,"reasons":`...)
	b = appendStrings(b, r.Reasons)
	b = append(b, `,"cautions":`...)
	b = appendStrings(b, c.Cautions)
	return append(b, '}')
}

func appendInput(b []byte, in *Input, v Value) []byte {
	switch in.Kind {
	case Word:
		b = append(b, `{"text":`...)
		b = AppendString(b, v.Text)
		return append(b, '}')
	case Numbers:
		b = append(b, `{"values":[`...)
		for i, n := range v.List {
			if i > 0 {
				b = append(b, ',')
			}
			b = strconv.AppendFloat(b, n, 'g', -1, 64)
		}
		b = append(b, `],"unit":`...)
		b = AppendString(b, in.Unit)
		return append(b, '}')
	case Bundle:
		b = append(b, `{"text":`...)
		b = AppendString(b, v.Text)
		return append(b, '}')
	}
	b = appendNumber(b, v.Num, in.unit())
	if in.Kind == Wire {
		b = append(b, `,"text":`...)
		b = AppendString(b, strings.Replace(v.Text, "²", "2", 1)) // as links write it
	}
	return append(b, '}')
}

func appendAnswer(b []byte, o *Output, a Answer) []byte {
	if o.Text {
		b = append(b, `{"text":`...)
		b = AppendString(b, a.Text)
		return append(b, '}')
	}
	b = appendNumber(b, a.Num, o.Unit)
	if a.Text != "" {
		b = append(b, `,"text":`...)
		b = AppendString(b, a.Text)
	}
	return append(b, '}')
}

// appendNumber opens an object with a value and its unit.
func appendNumber(b []byte, v float64, unit string) []byte {
	b = append(b, `{"value":`...)
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	b = append(b, `,"unit":`...)
	return AppendString(b, unit)
}

func appendKey(b []byte, more bool, key string) []byte {
	if more {
		b = append(b, ',')
	}
	b = AppendString(b, key)
	return append(b, ':')
}

func appendStrings(b []byte, list []string) []byte {
	b = append(b, '[')
	for i, s := range list {
		if i > 0 {
			b = append(b, ',')
		}
		b = AppendString(b, s)
	}
	return append(b, ']')
}

// AppendString writes a JSON string; s is UTF-8.
func AppendString(b []byte, s string) []byte {
	b = append(b, '"')
	from := 0
	for i := range len(s) {
		c := s[i]
		if c >= 0x20 && c != '"' && c != '\\' {
			continue
		}
		b = append(b, s[from:i]...)
		if c < 0x20 {
			b = append(b, '\\', 'u', '0', '0', hexDigits[c>>4], hexDigits[c&15]|0x20)
			from = i + 1
		} else {
			b = append(b, '\\')
			from = i
		}
	}
	return append(append(b, s[from:]...), '"')
}
