package sheet

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// A LimitRegister is the limits that sheets judge by: content/limits.yaml.
type LimitRegister struct {
	Source *finding.Source
	Limits []*Limit
}

// A Limit is one row of the register: a value, or a bound of one, that sheets
// link to instead of typing it. It is not changed once it is read, and any
// number of goroutines may share it.
type Limit struct {
	ID   string
	What string
	// Bound says what Numbers are: one number, or two for Between.
	Bound   Bound
	Numbers []calc.Quantity
	// Computation is the calculator and inputs that make the number; nil where
	// it is typed.
	Computation *Computation
	// From is where the number comes from, Standing how far that is known, and
	// Note what a reader should know beside it.
	From, Standing, Note string
	Span                 Span

	value    string
	computed string
}

// A Bound is how a limit bounds a value.
type Bound uint8

const (
	Exactly Bound = iota // 50 mm: a size to keep to
	AtMost
	AtLeast
	Between
)

// boundWords are the words before a number that make a bound of it.
var boundWords = [...]string{AtMost: "at most ", AtLeast: "at least "}

// Standings are how far the source of a limit is known, the best first.
var Standings = []string{"read", "restated", "common practice", "memory"}

// Named finds a limit by its id, nil where there is none.
func (r *LimitRegister) Named(id string) *Limit {
	for _, l := range r.Limits {
		if l.ID == id {
			return l
		}
	}
	return nil
}

// IDs lists the ids of all limits.
func (r *LimitRegister) IDs() []string {
	var ids []string
	for _, l := range r.Limits {
		ids = append(ids, l.ID)
	}
	return ids
}

// String is the limit in words: "at most 50 mA", "13.5 V to 14.8 V".
func (l *Limit) String() string {
	if l.Bound == Exactly || l.Bound == Between {
		return l.Amount()
	}
	return boundWords[l.Bound] + l.Amount()
}

// Amount is the limit's number without the words that make a bound of it.
func (l *Limit) Amount() string {
	switch {
	case l.computed != "":
		return l.computed
	case len(l.Numbers) == 2:
		return l.Numbers[0].String() + " to " + l.Numbers[1].String()
	case len(l.Numbers) == 1:
		return l.Numbers[0].String()
	}
	return ""
}

// Judges gives the limit as a reading is judged by it; false where it is a
// size and bounds nothing.
func (l *Limit) Judges() (calc.Limit, bool) {
	if len(l.Numbers) == 0 || l.Bound == Exactly {
		return calc.Limit{}, false
	}
	first := l.Numbers[0]
	limit := calc.Limit{Unit: first.Unit}
	switch l.Bound {
	case AtMost:
		limit.HasMax, limit.Max = true, first
	case AtLeast:
		limit.HasMin, limit.Min = true, first
	case Between:
		limit.HasMin, limit.Min = true, first
		limit.HasMax, limit.Max = true, l.Numbers[1]
	}
	return limit, true
}

// limitFields are the keys of a row.
var limitFields = []field[Limit]{
	{"id", "What links call it: parked-current.", true, oneName, func(r *yamlReader, n *yaml.Node, l *Limit) { l.ID = r.text(n) }},
	{"what", "What it limits, in a few words.", true, oneText, func(r *yamlReader, n *yaml.Node, l *Limit) { l.What = r.text(n) }},
	{"value", "50 mm, at most 50 mA, at least 11.8 V, 13.5 V to 14.8 V, or a calc: link with its output behind #, bound or not.", true, oneText, func(r *yamlReader, n *yaml.Node, l *Limit) { l.value = r.text(n) }},
	{"source", "Where the number comes from.", true, oneText, func(r *yamlReader, n *yaml.Node, l *Limit) { l.From = r.text(n) }},
	{"standing", "Whether the source was read, read as restated elsewhere, or is common practice or memory.", true, oneOf(Standings...), func(r *yamlReader, n *yaml.Node, l *Limit) { l.Standing = r.oneOf(n, Standings...) }},
	{"note", "What a reader should know beside it.", false, oneText, func(r *yamlReader, n *yaml.Node, l *Limit) { l.Note = r.text(n) }},
}

// A limitReader reads the register.
type limitReader struct {
	yamlReader
	reader *Reader
}

// readLimits reads content/limits.yaml: a list of limits. Computed ones are
// worked out here, once.
func readLimits(src *finding.Source, reader *Reader, report func(finding.Finding)) *LimitRegister {
	register := &LimitRegister{Source: src}
	r := &limitReader{newYAMLReader(src, Span{0, len(src.Text())}, "limit-register", report), reader}
	root := r.document()
	if root == nil {
		return register
	}
	for _, item := range r.items(root) {
		l := &Limit{Span: r.span(item)}
		readFields(&r.yamlReader, item, l, limitFields)
		switch {
		case item.Kind != yaml.MappingNode:
			continue
		case l.ID == "" || l.What == "" || l.value == "" || l.From == "" || l.Standing == "":
			r.fault(item, "a limit needs id, what, value, source and standing", "fill in what is missing")
		case Slug(l.ID) != l.ID:
			r.fault(item, "“"+l.ID+"” is not a limit's id", "write lower-case words joined by hyphens, such as parked-current")
		case register.Named(l.ID) != nil:
			r.fault(item, "two limits have the id "+l.ID, "give one of them another id")
		case r.value(item, l):
			register.Limits = append(register.Limits, l)
		}
	}
	return register
}

// value reads what a limit is; false where it cannot be read.
func (r *limitReader) value(at *yaml.Node, l *Limit) bool {
	rest := l.value
	for _, b := range [...]Bound{AtMost, AtLeast} {
		if after, ok := strings.CutPrefix(l.value, boundWords[b]); ok {
			l.Bound, rest = b, strings.TrimSpace(after)
		}
	}
	if link, ok := strings.CutPrefix(rest, "calc:"); ok {
		return r.compute(at, l, link)
	}
	texts := []string{rest}
	if low, high, ok := strings.Cut(rest, " to "); ok && l.Bound == Exactly {
		l.Bound, texts = Between, []string{low, high}
	}
	for _, text := range texts {
		q, msg := calc.ParseQuantity(text)
		if msg != "" {
			r.fault(at, "the value of "+l.ID+": "+msg, "write 50 mm, at most 50 mA, at least 11.8 V or 13.5 V to 14.8 V")
			return false
		}
		l.Numbers = append(l.Numbers, q)
	}
	return r.ordered(at, l)
}

// ordered gives both ends of a range one dimension and refuses one that is
// turned round.
func (r *limitReader) ordered(at *yaml.Node, l *Limit) bool {
	if l.Bound != Between {
		return true
	}
	low, high := &l.Numbers[0], l.Numbers[1]
	if low.Bare && !high.Bare { // 11 to 13 V
		low.Unit, low.Bare = high.Unit, false
	}
	if low.Unit.Dim != high.Unit.Dim || calc.Over(calc.Convert(low.Value, low.Unit, high.Unit), high.Value) {
		r.fault(at, "the value of "+l.ID+" runs from "+low.String()+" to "+high.String(), "give two numbers of one kind of unit, the smaller first")
		return false
	}
	return true
}

// compute works out the number of a computed limit.
func (r *limitReader) compute(at *yaml.Node, l *Limit, link string) bool {
	c, fault, do := r.reader.parseComputation(link)
	if fault == "" && len(c.Outputs) != 1 {
		fault, do = "a limit is one output of a calculator", "name it behind #, such as #"+c.Calculator.Outputs[0].Name
	}
	if fault != "" {
		r.fault(at, "the value of "+l.ID+": "+fault, do)
		return false
	}
	_, result, problems := c.Calculator.Answer(c.Pairs)
	for _, p := range problems {
		r.fault(at, "the value of "+l.ID+": "+p.Error(), "correct the link; baybook calc "+c.Calculator.Name+" lists what it takes")
	}
	if result == nil {
		return false
	}
	out := &c.Calculator.Outputs[c.Outputs[0]]
	answer := result.Outputs[c.Outputs[0]]
	unit, known := calc.LookupUnit(out.Unit)
	if !answer.Present || out.Text || !known {
		r.fault(at, "the value of "+l.ID+": "+c.Calculator.Name+" gives no number for "+out.Name, "name another output, or change the inputs")
		return false
	}
	l.Computation, l.computed = &c, out.Format(answer)
	l.Numbers = []calc.Quantity{{Value: answer.Num, Unit: unit, Bare: unit.Symbol == "", Number: calc.Format(answer.Num, 3)}}
	return true
}
