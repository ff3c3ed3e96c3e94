package calc

import "strconv"

// AppendDescription writes what a calculator takes and gives as one JSON
// object: names, units, ranges, choices, defaults, outputs, sources.
func AppendDescription(b []byte, c *Calculator) []byte {
	b = append(b, `{"calculator":`...)
	b = AppendString(b, c.Name)
	b = appendField(b, "title", c.Title)
	b = appendField(b, "question", c.Question)
	b = appendField(b, "doc", c.Doc)
	b = append(b, `,"inputs":[`...)
	for i := range c.Inputs {
		if i > 0 {
			b = append(b, ',')
		}
		b = describeInput(b, &c.Inputs[i])
	}
	b = append(b, `],"outputs":[`...)
	for i := range c.Outputs {
		o := &c.Outputs[i]
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"name":`...)
		b = AppendString(b, o.Name)
		b = appendField(b, "label", o.Label)
		if !o.Text {
			b = appendField(b, "unit", o.Unit)
		}
		b = append(b, `,"text":`...)
		b = strconv.AppendBool(b, o.Text)
		b = appendField(b, "help", o.Help)
		b = append(b, '}')
	}
	b = append(b, `],"decides":`...)
	b = AppendString(b, c.Outputs[c.Decisive()].Name)
	b = append(b, `,"figure":`...)
	b = strconv.AppendBool(b, c.Figure != nil)
	b = append(b, `,"sources":[`...)
	for i, s := range c.Sources {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"text":`...)
		b = AppendString(b, s.Text)
		if s.Standing != "" {
			b = appendField(b, "standing", s.Standing)
		}
		b = append(b, '}')
	}
	b = append(b, `],"limits":`...)
	b = appendStrings(b, c.Limits)
	b = append(b, `,"cautions":`...)
	b = appendStrings(b, c.Cautions)
	return append(b, '}')
}

// AppendList writes what calculators there are as one JSON array: name, title
// and question of each.
func AppendList(b []byte, list []*Calculator) []byte {
	b = append(b, '[')
	for i, c := range list {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"calculator":`...)
		b = AppendString(b, c.Name)
		b = appendField(b, "title", c.Title)
		b = append(appendField(b, "question", c.Question), '}')
	}
	return append(b, ']')
}

// AppendProblems writes what is wrong with a query as one JSON object: the
// input that is to blame, where there is one, and a message.
func AppendProblems(b []byte, problems []*Problem) []byte {
	b = append(b, `{"errors":[`...)
	for i, p := range problems {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, '{')
		if p.Input != "" {
			b = append(b, `"input":`...)
			b = append(AppendString(b, p.Input), ',')
		}
		b = append(b, `"message":`...)
		b = append(AppendString(b, p.Message), '}')
	}
	return append(b, ']', '}')
}

// kindNames are the kinds of input as JSON has them.
var kindNames = [...]string{Number: "number", Count: "count", Word: "word", Wire: "wire", Numbers: "numbers", Bundle: "bundle"}

func describeInput(b []byte, in *Input) []byte {
	b = append(b, `{"name":`...)
	b = AppendString(b, in.Name)
	b = appendField(b, "label", in.Label)
	b = appendField(b, "kind", kindNames[in.Kind])
	if in.Kind != Word {
		b = appendField(b, "unit", in.unit())
	}
	switch {
	case in.Kind == Word:
		b = append(b, `,"choices":`...)
		b = appendStrings(b, in.Words)
	case len(in.OneOf) > 0:
		b = append(b, `,"choices":[`...)
		for i, v := range in.OneOf {
			if i > 0 {
				b = append(b, ',')
			}
			b = strconv.AppendFloat(b, v, 'g', -1, 64)
		}
		b = append(b, ']')
	default:
		b = append(b, `,"min":`...)
		b = strconv.AppendFloat(b, in.Min, 'g', -1, 64)
		b = append(b, `,"max":`...)
		b = strconv.AppendFloat(b, in.Max, 'g', -1, 64)
	}
	if in.Most > 0 {
		b = append(b, `,"most":`...)
		b = strconv.AppendInt(b, int64(in.Most), 10)
	}
	b = appendField(b, "default", in.Default)
	b = appendField(b, "help", in.Help)
	return append(b, '}')
}

func appendField(b []byte, name, value string) []byte {
	b = append(b, ',')
	b = AppendString(b, name)
	b = append(b, ':')
	return AppendString(b, value)
}
