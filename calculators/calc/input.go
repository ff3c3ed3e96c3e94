package calc

import (
	"math"
	"strings"
)

// A Kind is what an input takes.
type Kind uint8

const (
	Number  Kind = iota // a quantity in a range
	Count               // a whole number in a range
	Word                // one of the words in Words
	Wire                // a conductor size
	Numbers             // a comma-separated list of quantities
	Bundle              // a comma-separated list of count×diameter
)

// An Input is one thing that a calculator asks for.
type Input struct {
	// Name is the key in a query, lower case with underscores.
	Name string
	// Label is what a form shows: two or three words.
	Label string
	Kind  Kind
	// Unit is the symbol of the unit that a bare number has, "" for none.
	Unit string
	// Min and Max bound the value, both included, in Unit; for lists, each item.
	Min, Max float64
	// OneOf, where not empty, are the only numbers accepted.
	OneOf []float64
	// Words are the words accepted by a Word input.
	Words []string
	// Most is how many items a list may have.
	Most int
	// Default is the value used when none is given, written as a query has it.
	Default string
	// Help says what it is and where it is read off a vehicle or a data sheet.
	Help string
}

// A Value is what an input was given.
type Value struct {
	// Num is the number in the input's own unit; for a wire, its area in mm2.
	Num float64
	// Text is the value as given, tidied: "13 ft", "16 AWG", "body".
	Text string
	Wire WireSize
	// List holds the items of a Numbers input, in the input's own unit.
	List []float64
	// Strands holds the items of a Bundle input.
	Strands []Strand
}

// A Strand is so many equal wires of a bundle.
type Strand struct {
	Count    int
	Diameter float64 // in the input's own unit
	Text     string  // "7 × 2.4 mm"
}

// readers reads a value by the kind of its input. The message is complete
// but for the input's name, and empty where the value is accepted.
var readers = [...]func(in *Input, s string) (Value, string){
	Number: readNumber, Count: readNumber, Word: readWord, Wire: readWire,
	Numbers: readNumbers, Bundle: readBundle,
}

// Read turns text into a value, or says what is wrong with it and what is
// accepted.
func (in *Input) Read(s string) (Value, string) {
	if strings.TrimSpace(s) == "" {
		return Value{}, "nothing given; give " + in.Accepts()
	}
	return readers[in.Kind](in, s)
}

// Accepts says what the input takes: "0.05 m to 60 m", "one of wire, body".
func (in *Input) Accepts() string {
	switch {
	case in.Kind == Word:
		return "one of " + strings.Join(in.Words, ", ")
	case len(in.OneOf) > 0:
		var of []string
		for _, v := range in.OneOf {
			of = append(of, exact(v))
		}
		return "one of " + withUnit(strings.Join(of, ", "), in.Unit)
	case in.Kind == Wire:
		return "a wire from " + Show(in.Min, 4) + " mm2 to " + Show(in.Max, 4) + " mm2, or " + gaugesWithin(in.Min, in.Max)
	}
	return withUnit(exact(in.Min), in.Unit) + " to " + withUnit(exact(in.Max), in.Unit)
}

func readNumber(in *Input, s string) (Value, string) {
	q, msg := ParseQuantity(s)
	if msg != "" {
		return Value{}, msg + " (" + in.Accepts() + ")"
	}
	v, msg := in.own(q)
	if msg != "" {
		return Value{}, msg
	}
	if in.Kind == Count {
		if v != math.Trunc(v) {
			return Value{}, q.String() + " is not a whole number; give " + in.Accepts()
		}
	}
	if len(in.OneOf) > 0 {
		return in.pick(q, v)
	}
	if msg := in.inRange(v, q.String()); msg != "" {
		return Value{}, msg
	}
	return Value{Num: v, Text: in.textOf(q)}, ""
}

// own turns a quantity into the input's own unit.
func (in *Input) own(q Quantity) (float64, string) {
	unit := mustUnit(in.Unit)
	if q.Bare {
		return q.Value, ""
	}
	if q.Unit.Dim != unit.Dim {
		return 0, q.String() + " is " + q.Unit.Dim.String() + "; " + in.wants(unit)
	}
	v := Convert(q.Value, q.Unit, unit)
	if math.IsInf(v, 0) {
		return 0, q.String() + " is not a finite number of " + in.Unit
	}
	return v + 0, "" // a conversion may underflow to a negative zero
}

// wants says which units would do.
func (in *Input) wants(unit Unit) string {
	if unit.Dim == None {
		return "give a number without a unit"
	}
	var symbols []string
	for _, u := range UnitsOf(unit.Dim) {
		symbols = append(symbols, u.Symbol)
	}
	return "give " + unit.Dim.String() + " in " + strings.Join(symbols, ", ")
}

// inRange says that a value is outside, in the input's own words.
func (in *Input) inRange(v float64, given string) string {
	if !Under(v, in.Min) && !Over(v, in.Max) {
		return ""
	}
	if in.Unit != "" && !strings.Contains(given, " ") {
		given = withUnit(given, in.Unit)
	}
	return given + " is outside " + in.Accepts()
}

// pick finds the listed number that the value is.
func (in *Input) pick(q Quantity, v float64) (Value, string) {
	for _, one := range in.OneOf {
		if !Over(v, one) && !Under(v, one) {
			return Value{Num: one, Text: in.textOf(q)}, ""
		}
	}
	return Value{}, withUnit(q.Number, q.Unit.Symbol) + " is not " + in.Accepts()
}

// textOf writes a quantity as given, a bare number with the input's own unit.
func (in *Input) textOf(q Quantity) string {
	if q.Bare {
		return withUnit(q.Number, in.Unit)
	}
	return q.String()
}

// readWord accepts a word in any case and with any spaces ("2.83 V").
func readWord(in *Input, s string) (Value, string) {
	given := strings.Join(strings.Fields(s), "")
	for _, w := range in.Words {
		if strings.EqualFold(given, w) {
			return Value{Text: w}, ""
		}
	}
	msg := strings.TrimSpace(s) + " is not " + in.Accepts()
	if near := Nearest(given, in.Words); near != "" {
		msg += "; did you mean " + near + "?"
	}
	return Value{}, msg
}

func readWire(in *Input, s string) (Value, string) {
	w, msg := ParseWire(s)
	if msg != "" {
		return Value{}, msg
	}
	if Under(w.Area, in.Min) || Over(w.Area, in.Max) {
		return Value{}, w.Text + " is outside " + in.Accepts()
	}
	return Value{Num: w.Area, Text: w.Text, Wire: w}, ""
}

func readNumbers(in *Input, s string) (Value, string) {
	var v Value
	var texts []string
	for item := range strings.SplitSeq(s, ",") {
		one := Input{Unit: in.Unit, Min: in.Min, Max: in.Max}
		r, msg := readNumber(&one, item)
		if msg != "" {
			return Value{}, msg
		}
		v.List = append(v.List, r.Num)
		texts = append(texts, r.Text)
	}
	if len(v.List) > in.Most {
		return Value{}, exact(float64(len(v.List))) + " items given; at most " + exact(float64(in.Most)) + " are accepted"
	}
	v.Text = strings.Join(texts, ", ")
	return v, ""
}

func readBundle(in *Input, s string) (Value, string) {
	var v Value
	var texts []string
	all := 0
	for item := range strings.SplitSeq(s, ",") {
		strand, msg := in.readStrand(strings.TrimSpace(item))
		if msg != "" {
			return Value{}, msg
		}
		if all += strand.Count; all > in.Most {
			return Value{}, "more than " + exact(float64(in.Most)) + " wires; give 1 to " + exact(float64(in.Most)) + " in all"
		}
		v.Strands = append(v.Strands, strand)
		texts = append(texts, strand.Text)
	}
	v.Text = strings.Join(texts, ", ")
	return v, ""
}

// readStrand reads one count×diameter: "7x2.4", "2 × 3.5 mm".
func (in *Input) readStrand(item string) (Strand, string) {
	const form = "; give count x diameter, such as 7x2.4mm"
	at, sign := strings.IndexAny(item, "xX"), 1
	if i := strings.Index(item, "×"); i >= 0 && (at < 0 || i < at) {
		at, sign = i, len("×")
	}
	if at < 0 {
		return Strand{}, "“" + item + "” has no count" + form
	}
	count := strings.TrimSpace(item[:at])
	n := 0
	for i := range len(count) {
		if !isDigit(count[i]) || n > in.Most {
			n = 0
			break
		}
		n = n*10 + int(count[i]-'0')
	}
	if n < 1 {
		return Strand{}, "“" + item + "” has no whole count of 1 or more" + form
	}
	if n > in.Most {
		return Strand{}, "more than " + exact(float64(in.Most)) + " wires; give 1 to " + exact(float64(in.Most)) + " in all"
	}
	one := Input{Unit: in.Unit, Min: in.Min, Max: in.Max}
	v, msg := readNumber(&one, item[at+sign:])
	if msg != "" {
		return Strand{}, msg
	}
	return Strand{Count: n, Diameter: v.Num, Text: count + " × " + v.Text}, ""
}
