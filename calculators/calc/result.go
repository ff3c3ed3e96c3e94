package calc

import "strings"

// A Verdict judges a result.
type Verdict uint8

const (
	OK    Verdict = iota
	Check         // think before doing this
	Stop          // do not do this
)

// String is the verdict as it stands in JSON.
func (v Verdict) String() string { return [...]string{"ok", "check", "stop"}[v] }

// Title is the verdict as a person reads it.
func (v Verdict) Title() string { return [...]string{"OK", "Check", "Stop"}[v] }

// An Answer is the value of one output.
type Answer struct {
	// Present is false where the output does not exist for these inputs.
	Present bool
	// Num is the number, in the output's own unit.
	Num float64
	// Currency is the one that a price is in, "" where none was given.
	Currency string
	// Text is the words of a text output, or the trade's name for the number
	// ("16 AWG"), else empty.
	Text string
}

// A Result is everything that a computation gives.
type Result struct {
	calculator *Calculator
	values     *Values
	Outputs    []Answer // parallel to the calculator's Outputs
	Verdict    Verdict
	// Reasons say why the verdict is not ok, which outputs are absent and why,
	// and what else the reader must know about these inputs.
	Reasons []string
	// Links are the calculators that reasons point at, filled in.
	Links []Link
	// Working carries the numbers through the formula, a line a step.
	Working []string
	// FigureData is what Run worked out for Figure beyond the outputs, such as where
	// wires lie; nil for most.
	FigureData any
}

// Calculator is the calculator that computed the result.
func (r *Result) Calculator() *Calculator { return r.calculator }

// Get is the answer of the named output.
func (r *Result) Get(name string) Answer { return r.Outputs[r.output(name)] }

// Num is the number of the named output, in its own unit.
func (r *Result) Num(name string) float64 { return r.Get(name).Num }

func (r *Result) output(name string) int {
	i := r.calculator.Output(name)
	if i < 0 {
		panic("calc: " + r.calculator.Name + " has no output " + name)
	}
	return i
}

// Set gives an output its number, in the output's own unit.
func (r *Result) Set(name string, v float64) {
	i := r.output(name)
	r.Outputs[i] = Answer{Present: true, Num: v + 0}
	if r.calculator.Outputs[i].Price {
		r.Outputs[i].Currency = r.values.currency()
	}
}

// SetSI gives an output its number in the base unit of its dimension.
func (r *Result) SetSI(name string, v float64) {
	u := mustUnit(r.calculator.Outputs[r.output(name)].Unit)
	r.Set(name, (v-u.Zero)/u.Base)
}

// SetText gives a text output its words.
func (r *Result) SetText(name, text string) {
	r.Outputs[r.output(name)] = Answer{Present: true, Text: text}
}

// SetNamed gives an output a number and the trade's name for it.
func (r *Result) SetNamed(name string, v float64, text string) {
	r.Outputs[r.output(name)] = Answer{Present: true, Num: v + 0, Text: text}
}

// Stop says: do not do this, and why. The reason may be a template (see Fill).
func (r *Result) Stop(reason string, numbers ...float64) { r.judge(Stop, reason, numbers) }

// Check says: think before doing this, and why.
func (r *Result) Check(reason string, numbers ...float64) { r.judge(Check, reason, numbers) }

// Note adds a reason that does not change the verdict, such as why an output
// is absent.
func (r *Result) Note(reason string, numbers ...float64) { r.judge(OK, reason, numbers) }

// Work adds a line of working.
func (r *Result) Work(line string, numbers ...float64) {
	r.Working = append(r.Working, r.fill(line, numbers))
}

func (r *Result) judge(v Verdict, reason string, numbers []float64) {
	r.Verdict = max(r.Verdict, v)
	r.Reasons = append(r.Reasons, r.unlink(r.fill(reason, numbers)))
}

// Format writes an answer as a person reads it: "0.83 V", "16 AWG", "2.5 mm²",
// a price with its currency.
func (o *Output) Format(a Answer) string {
	if a.Text != "" {
		return strings.Replace(a.Text, "mm2", "mm²", 1) // sizes are named in ASCII
	}
	if o.Places > 0 {
		return withCurrency(a.Currency, withUnit(FormatFixed(a.Num, o.Places), o.Unit))
	}
	figures := o.Figures
	if figures == 0 {
		figures = 3
	}
	return FormatUnit(a.Num, figures, o.Unit)
}
