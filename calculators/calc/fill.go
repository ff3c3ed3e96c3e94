package calc

import "strings"

// fill writes a line about a computation from a template, so that words and
// numbers stand in one text that a person can read:
//
//	{current}    the input as given, "8 A"
//	{drop}       the output as shown, "0.83 V"
//	{drop:4}     the output with four significant figures
//	{1:4 mohm}   the first of the numbers, with figures and unit
//	{1:4}        the same, bare
//
// One text is also far less code for the browser to fetch than a text put
// together from pieces. A name that the calculator does not list is a fault of
// the program and panics; the list's tests run every line.
func (r *Result) fill(template string, numbers []float64) string {
	open := strings.IndexByte(template, '{')
	if open < 0 {
		return template
	}
	var b []byte
	for open >= 0 {
		b = append(b, template[:open]...)
		end := strings.IndexByte(template, '}')
		b = append(b, r.slot(template[open+1:end], numbers)...)
		template = template[end+1:]
		open = strings.IndexByte(template, '{')
	}
	return string(append(b, template...))
}

// slot writes what one pair of braces stands for.
func (r *Result) slot(slot string, numbers []float64) string {
	name, format, _ := strings.Cut(slot, ":")
	figures := 0
	if format != "" && isDigit(format[0]) {
		figures = int(format[0] - '0')
		format = strings.TrimPrefix(format[1:], " ")
	}
	if len(name) == 1 && isDigit(name[0]) {
		return FormatUnit(numbers[name[0]-'1'], max(1, figures), format)
	}
	if i := r.calculator.Output(name); i >= 0 {
		o := r.calculator.Outputs[i]
		if figures > 0 {
			o.Figures = figures
		}
		return o.Format(r.Outputs[i])
	}
	return r.values.Word(name)
}

// Fill writes a line from a template, as Work, Note, Check and Stop do.
func (r *Result) Fill(template string, numbers ...float64) string {
	return r.fill(template, numbers)
}
