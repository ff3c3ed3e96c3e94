package calc

import (
	"math"
	"strings"
)

// PracticeTolerance is how far an apprentice's answer may be from the
// computed one, relative to it: room for two-figure tables and rounding on
// the way, not for a wrong formula.
const PracticeTolerance = 0.02

// Draw picks fresh numbers for a practice problem: each range gives a round
// value, the same for the same seed. Draws for which the asked output does
// not exist are passed over.
func (s *Sweep) Draw(seed uint64, output int) []Pair {
	var pairs []Pair
	for range 32 {
		pairs = append([]Pair(nil), s.Fixed...)
		for i := range s.Ranges {
			var u float64
			seed, u = random(seed)
			pairs = append(pairs, Pair{Key: s.Ranges[i].Input.Name, Value: s.Ranges[i].pick(u)})
		}
		_, r, _ := s.Calculator.Answer(pairs)
		if r != nil && r.Outputs[output].Present {
			break
		}
	}
	return pairs
}

// random is the next number of a splitmix64 sequence, from 0 up to 1.
func random(state uint64) (next uint64, u float64) {
	state += 0x9e3779b97f4a7c15
	z := state
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	z ^= z >> 31
	return state, float64(z>>11) / (1 << 53)
}

// pick is a round value at the fraction u of the range, in the unit written.
func (r *PracticeRange) pick(u float64) string {
	own := mustUnit(r.Input.unit())
	low, top := convert(r.Low, own, &r.Unit), convert(r.Top, own, &r.Unit)
	step := niceStep((top - low) / 40)
	if r.Input.Kind == Count {
		step = 1
	}
	n := math.Floor((top-low)/step + 1e-9)
	v := low + step*math.Floor(u*(n+1))
	return withUnit(Format(math.Min(v, top), 6), r.Unit.Symbol)
}

// AppendGivens writes what a practice problem gives, as HTML: the inputs that
// its query names, the others standing at their defaults.
func AppendGivens(b []byte, v *Values, pairs []Pair) []byte {
	b = append(b, `<dl class="givens">`...)
	for _, p := range pairs {
		b = AppendForm(b, `<div><dt>%</dt><dd>%</dd></div>`, v.calculator.Input(p.Key).Label, v.Word(p.Key))
	}
	return append(b, `</dl>`...)
}

// A Marking judges an answer to a practice problem.
type Marking struct {
	// Read is false where the answer could not be read; Text then says why.
	Read  bool
	Right bool
	// Text says the outcome and the computed answer.
	Text string
	// Working is the way there.
	Working []string
}

// Mark judges an answer typed in any unit of the output's dimension; a bare
// number has the output's own unit. Outputs in words are compared as words.
func Mark(c *Calculator, pairs []Pair, output int, answer string) Marking {
	_, r, problems := c.Answer(pairs)
	if r == nil || !r.Outputs[output].Present {
		text := "this problem has no answer"
		if len(problems) > 0 {
			text += ": " + problems[0].Error()
		}
		return Marking{Text: text}
	}
	o, a := &c.Outputs[output], r.Outputs[output]
	right, msg := o.matches(a, answer)
	if msg != "" {
		return Marking{Text: msg}
	}
	m := Marking{Read: true, Right: right, Working: r.Working, Text: "Not yet. It is " + o.Format(a) + "."}
	if right {
		m.Text = "Right. It is " + o.Format(a) + "."
	}
	return m
}

// matches compares an answer as typed with the computed one.
func (o *Output) matches(a Answer, typed string) (bool, string) {
	if !o.Text {
		var msg string
		if typed, msg = PointForComma(typed); msg != "" {
			return false, msg
		}
	}
	if o.Text {
		return SameWord(strings.TrimSpace(typed), a.Text), ""
	}
	if a.Text != "" { // a number with a trade name: a wire size
		var w WireSize
		msg := w.read(typed)
		return msg == "" && math.Abs(w.Area-a.Num) <= slack*a.Num, msg
	}
	var q Quantity
	if msg := q.read(typed); msg != "" {
		return false, msg
	}
	unit := mustUnit(o.Unit)
	v := q.Value
	if !q.Bare {
		if q.Unit.Dim != unit.Dim {
			return false, q.is() + "; give " + unit.Dim.String() + " (" + ShownUnit(o.Unit) + ")"
		}
		v = q.in(unit)
	}
	return math.Abs(v-a.Num) <= PracticeTolerance*math.Abs(a.Num)*(1+slack), ""
}

// AppendMarking writes a marking as HTML, its working folded out.
func AppendMarking(b []byte, m Marking) []byte {
	b = AppendForm(b, `<p class="marked"><strong>%</strong></p>`, m.Text)
	return appendItems(b, "lines", m.Working)
}
