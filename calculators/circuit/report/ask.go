package report

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/circuit"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/judge"
)

// Ask answers a page: encoded is a circuit as Draft.Encode wrote it, query its
// changes, in which state= names the state to draw, width= how wide to draw,
// and block= the title block: title, number, revision and date with tabs
// between them. It returns the markup of the circuit as it is then, or the problems.
func Ask(encoded, query string) (markup []byte, problems []*calc.Problem) {
	d, msg := circuit.Decode(encoded)
	if msg != "" {
		return nil, []*calc.Problem{calc.NewProblem("", msg)}
	}
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		return nil, []*calc.Problem{calc.NewProblem("", msg)}
	}
	view := draw.View{}
	var changes []calc.Pair
	var read readings
	for _, p := range pairs {
		switch p.Key {
		case "state":
			view.State = p.Value
		case "block":
			f := append(strings.Split(p.Value, "\t"), "", "", "", "")
			view.Block = draw.TitleBlock{Title: f[0], Number: f[1], Revision: f[2], Date: f[3]}
		case "width":
			width := calc.Input{Min: 240, Max: 2000}
			v, msg := width.Read(p.Value)
			if msg != "" {
				return nil, []*calc.Problem{calc.NewProblem("width", msg)}
			}
			view.Width = v.Num
		default:
			if !read.read(p) {
				changes = append(changes, p)
			}
		}
	}
	d, problems = d.Change(changes)
	if len(problems) > 0 {
		return nil, problems
	}
	n, refused := judge.Build(d)
	for _, p := range refused {
		problems = append(problems, calc.NewProblem(p.Key, p.Message+"; "+p.Do))
	}
	if n == nil {
		return nil, problems
	}
	a := judge.Assess(n)
	markup, problems = read.appendSuspects(nil, a, view.StateOf(a))
	if len(problems) > 0 {
		return nil, problems
	}
	return AppendMarkup(markup, a, view), nil
}
