package calc

import "strings"

// PointForComma turns the decimal comma of a number that a person typed into
// a field into a point: "4,5 m" is 4.5 m. With exactly three digits behind it
// a comma may mean thousands, so that is refused; so are several commas, and a
// comma beside a point. Links and the prompt do not use it: there a comma
// parts the items of a list.
func PointForComma(s string) (point, message string) {
	at := strings.IndexByte(s, ',')
	if at < 0 {
		return s, ""
	}
	end := digits(s, at+1)
	switch behind := end - at - 1; {
	case at == 0 || !isDigit(s[at-1]) || behind == 0:
		return s, s + " has a comma where no number has one; write 4.5 or 4,5"
	case strings.IndexByte(s[end:], ',') >= 0 || strings.IndexByte(s, '.') >= 0:
		return s, s + " has a comma and another mark; write it without a thousands mark"
	case behind == 3:
		return s, s + " could be " + s[:at] + "." + s[at+1:] + " or " + s[:at] + s[at+1:] + "; write the one that you mean"
	}
	return s[:at] + "." + s[at+1:], ""
}

// ReadTyped is Read for a value that a person typed into a field: a decimal
// comma is read too, except in inputs that take a list.
func (c *Calculator) ReadTyped(pairs []Pair) ([]Pair, []*Problem) {
	typed := append([]Pair(nil), pairs...)
	var problems []*Problem
	for i := range typed {
		in := c.Input(typed[i].Key)
		if in == nil || in.Kind == Numbers || in.Kind == Bundle || in.Kind == Word {
			continue
		}
		value, msg := PointForComma(typed[i].Value)
		typed[i].Value = value
		if msg != "" {
			problems = append(problems, NewProblem(in.Name, msg))
		}
	}
	return typed, problems
}
