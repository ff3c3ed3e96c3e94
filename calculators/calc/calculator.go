package calc

import "math"

// A Calculator is one question of the trade with its formula. It is a value:
// the list in package calculators is all there is to registering one.
type Calculator struct {
	// Name is lower case with hyphens: "wire-drop".
	Name string
	// Title is what a page and a form are headed.
	Title string
	// Question is what a tech asks: "Will the wire do?".
	Question string
	// Doc says in a sentence or two what it answers.
	Doc string
	// Decides names the output that answers the question, which a page shows
	// first; the first of Outputs where it is "".
	Decides string
	Inputs  []Input
	Outputs []Output
	// Sources are where the formula and its tables come from.
	Sources []Source
	// Limits are what it leaves out.
	Limits []string
	// Cautions travel with every result.
	Cautions []string
	// Search, where set, starts the search whose outcome Run answers with
	// (Values.Found).
	Search func(in *Values) Search
	// Run computes. It returns a *Problem where the inputs, each in range,
	// are impossible together.
	Run func(in *Values, out *Result) *Problem
	// Figure draws the result; nil where words do better.
	Figure func(in *Values, out *Result) *Drawing
	// changed are the defaults that WithDefaults gave it.
	changed []Pair
}

// An Output is one thing that a calculator gives.
type Output struct {
	Name, Label string
	// Unit is the symbol that the number is in, "" for a bare number or text.
	Unit string
	// Figures is how many significant figures are shown; 0 means 3.
	Figures int
	// Places, where above 0, is how many decimal places are shown instead:
	// for money, and for levels in dB, which may lie near 0.
	Places int
	// Price is true for an amount of money.
	Price bool
	// Text is true for an output in words without a number.
	Text bool
	// Help says what it means.
	Help string
}

// A Source is where a formula, a table or a limit comes from. Standing says how
// sure it is: "" for a published source as read, else "read as restated" (what
// others print of it), "common practice, no source" or "from memory".
type Source struct{ Text, Standing string }

// A Problem is an input that cannot be used, with what is accepted. It is an
// error.
type Problem struct {
	// Input is the input's name, "" where no single one is to blame.
	Input string
	// Message says what was given and what is accepted.
	Message string
}

func (p *Problem) Error() string {
	if p.Input == "" {
		return p.Message
	}
	return p.Input + ": " + p.Message
}

// NewProblem returns a problem about one input ("" for none in particular), for
// inputs that each read well but are impossible together.
func NewProblem(input, message string) *Problem { return &Problem{Input: input, Message: message} }

// indexOf is the index of the named input, -1 where there is none.
func (c *Calculator) indexOf(name string) int {
	for i := range c.Inputs {
		if c.Inputs[i].Name == name {
			return i
		}
	}
	return -1
}

// input is the index of an input that there must be.
func (c *Calculator) input(name string) int {
	i := c.indexOf(name)
	if i < 0 {
		panic("calc: " + c.Name + " has no input " + name)
	}
	return i
}

// Output is the index of the named output, -1 where there is none.
func (c *Calculator) Output(name string) int {
	for i := range c.Outputs {
		if c.Outputs[i].Name == name {
			return i
		}
	}
	return -1
}

// Decisive is the index of the output that answers the calculator's question.
func (c *Calculator) Decisive() int { return max(0, c.Output(c.Decides)) }

// Input finds an input by name, nil where there is none.
func (c *Calculator) Input(name string) *Input {
	if i := c.indexOf(name); i >= 0 {
		return &c.Inputs[i]
	}
	return nil
}

// Read turns pairs into values, defaults filled in, and lists every problem:
// unknown and repeated inputs, and each value that is refused. The values
// are usable only where there is no problem.
func (c *Calculator) Read(pairs []Pair) (*Values, []*Problem) {
	var problems []*Problem
	v := &Values{calculator: c, list: make([]Value, len(c.Inputs))}
	given := make([]bool, len(c.Inputs))
	for _, p := range pairs {
		i := c.indexOf(p.Key)
		if i < 0 {
			problems = append(problems, c.unknown(p.Key))
			continue
		}
		msg := "given twice; give it once"
		if !given[i] {
			msg = c.Inputs[i].read(p.Value, &v.list[i])
		}
		given[i] = true
		if msg != "" {
			problems = append(problems, NewProblem(p.Key, msg))
		}
	}
	for i := range c.Inputs {
		if !given[i] {
			c.Inputs[i].read(c.Inputs[i].Default, &v.list[i])
		}
	}
	if p := v.oneCurrency(); p != nil {
		problems = append(problems, p)
	}
	return v, problems
}

// unknown refuses an input's name, with the nearest one there is.
func (c *Calculator) unknown(name string) *Problem {
	var names []string
	all := ""
	for i := range c.Inputs {
		names = append(names, c.Inputs[i].Name)
		all = listed(all, c.Inputs[i].Name)
	}
	msg := "“" + name + "” is not an input of " + c.Name
	if near := Nearest(name, names); near != "" {
		return NewProblem("", msg+"; did you mean "+near+"?")
	}
	return NewProblem("", msg+"; its inputs are "+all)
}

// Eval computes with values that Read gave.
func (c *Calculator) Eval(v *Values) (*Result, *Problem) {
	if c.Search != nil && v.found == nil {
		for v.found = c.Search(v); v.found.Step(); { // to its end
		}
	}
	r := &Result{calculator: c, values: v, Outputs: make([]Answer, len(c.Outputs))}
	if p := c.Run(v, r); p != nil {
		return nil, p
	}
	for i := range r.Outputs {
		if n := r.Outputs[i].Num; math.IsNaN(n) || math.IsInf(n, 0) {
			return nil, NewProblem("", "these inputs together are too extreme: "+c.Outputs[i].Name+" has no finite value")
		}
	}
	return r, nil
}

// Answer reads pairs and computes. Pages, links, the prompt and the browser
// all come in here. The result is nil where there is a problem.
func (c *Calculator) Answer(pairs []Pair) (*Values, *Result, []*Problem) {
	v, problems := c.Read(pairs)
	if len(problems) > 0 {
		return v, nil, problems
	}
	r, p := c.Eval(v)
	if p != nil {
		return v, nil, []*Problem{p}
	}
	return v, r, nil
}
