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
	// Price is true for an amount of money, which may carry a currency.
	Price bool
	// Words are the words accepted by a Word input.
	Words []string
	// Most is how many items a list may have.
	Most int
	// Default is the value used when none is given, written as a query has it.
	// "" makes the input optional: the calculator then does without it.
	Default string
	// Help says what it is and where it is read off a vehicle or a data sheet.
	Help string
}

// A Value is what was given for an input.
type Value struct {
	// Num is the number in the input's own unit; for a wire, its area in mm2.
	Num float64
	// Text is the value as given, tidied: "13 ft", "16 AWG", "body".
	Text string
	// Currency is the one that a price was given in, else "".
	Currency string
	Wire     WireSize
	// List holds the items of a Numbers input, in the input's own unit.
	List []float64
	// Strands holds the items of a Bundle input.
	Strands []Strand
}

// A Strand is one item of a bundle: a number of equal wires.
type Strand struct {
	Count    int
	Diameter float64 // in the input's own unit
	Text     string  // "7 × 2.4 mm"
}

// readers reads a value by the kind of its input. The message is complete
// but for the input's name, and empty where the value is accepted.
var readers = [...]func(in *Input, s string, v *Value) string{
	Number: readNumber, Count: readNumber, Word: readWord, Wire: readWire,
	Numbers: readNumbers, Bundle: readBundle,
}

// Read turns text into a value, or says what is wrong with it and what is
// accepted.
func (in *Input) Read(s string) (Value, string) {
	var v Value
	if msg := in.read(s, &v); msg != "" {
		return Value{}, msg
	}
	return v, ""
}

// read is Read into v, which must not be used where there is a message.
func (in *Input) read(s string, v *Value) string {
	if strings.TrimSpace(s) == "" {
		if in.Default == "" {
			return ""
		}
		return "nothing given; give " + in.Accepts()
	}
	return readers[in.Kind](in, s, v)
}

// Accepts says what the input takes: "0.05 m to 60 m", "one of wire, body".
func (in *Input) Accepts() string {
	switch {
	case in.Kind == Word:
		return "one of " + strings.Join(in.Words, ", ")
	case len(in.OneOf) > 0:
		of := ""
		for _, v := range in.OneOf {
			of = listed(of, exact(v))
		}
		return "one of " + withUnit(of, in.Unit)
	case in.Kind == Wire:
		return "a wire from " + FormatUnit(in.Min, 4, "mm2") + " to " + FormatUnit(in.Max, 4, "mm2") + ", or " + gaugesWithin(in.Min, in.Max)
	}
	return withUnit(exact(in.Min), in.Unit) + " to " + withUnit(exact(in.Max), in.Unit)
}

func readNumber(in *Input, s string, v *Value) string {
	var q Quantity
	if msg := q.read(s); msg != "" {
		return msg + " (" + in.Accepts() + ")"
	}
	if msg := in.own(&q, v); msg != "" {
		return msg
	}
	if in.Kind == Count && v.Num != math.Trunc(v.Num) {
		return q.String() + " is not a whole number; give " + in.Accepts()
	}
	if q.Currency != "" && !in.Price {
		return q.String() + " is a price; give " + in.Accepts()
	}
	unit := q.Unit.Symbol
	if q.Bare {
		unit = in.Unit
	}
	v.Text, v.Currency = withCurrency(q.Currency, q.shown(unit)), q.Currency
	if len(in.OneOf) > 0 {
		return in.pick(&q, v)
	}
	return in.inRange(v.Num, q.String())
}

// own converts a quantity to the input's own unit.
func (in *Input) own(q *Quantity, v *Value) string {
	v.Num = q.Value
	if q.Bare {
		return ""
	}
	unit := mustUnit(in.Unit)
	if q.Unit.Dim != unit.Dim {
		return q.is() + "; " + in.wants(unit)
	}
	v.Num = q.in(unit) + 0 // a conversion may underflow to a negative zero
	if math.IsInf(v.Num, 0) {
		return q.String() + " is not a finite number of " + in.Unit
	}
	return ""
}

// wants says which units would do.
func (in *Input) wants(unit *Unit) string {
	if unit.Dim == None {
		return "give a number without a unit"
	}
	said := ""
	for i := range units {
		if units[i].Dim == unit.Dim {
			said = listed(said, ShownUnit(units[i].Symbol))
		}
	}
	return "give " + unit.Dim.String() + " in " + said
}

// listed adds an item to a list in words.
func listed(list, item string) string {
	if list == "" {
		return item
	}
	return list + ", " + item
}

// inRange says that a value is outside, in the input's own words.
func (in *Input) inRange(v float64, given string) string {
	if !Under(v, in.Min) && !Over(v, in.Max) {
		return ""
	}
	if in.Unit != "" && strings.IndexByte(given, ' ') < 0 {
		given = withUnit(given, in.Unit)
	}
	return given + " is outside " + in.Accepts()
}

// pick finds the number of OneOf that the value equals.
func (in *Input) pick(q *Quantity, v *Value) string {
	for _, one := range in.OneOf {
		if !Over(v.Num, one) && !Under(v.Num, one) {
			v.Num = one
			return ""
		}
	}
	return q.String() + " is not " + in.Accepts()
}

// readWord accepts a word in any case and with any spaces ("2.83 V").
func readWord(in *Input, s string, v *Value) string {
	given := strings.Join(Words(s), "")
	for _, w := range in.Words {
		if SameWord(given, w) {
			v.Text = w
			return ""
		}
	}
	msg := strings.TrimSpace(s) + " is not " + in.Accepts()
	if near := Nearest(given, in.Words); near != "" {
		msg += "; did you mean " + near + "?"
	}
	return msg
}

func readWire(in *Input, s string, v *Value) string {
	if msg := v.Wire.read(s); msg != "" {
		return msg
	}
	v.Num, v.Text = v.Wire.Area, v.Wire.Text
	if Under(v.Num, in.Min) || Over(v.Num, in.Max) {
		return v.Text + " is outside " + in.Accepts()
	}
	return ""
}

// eachItem takes the items of a list one by one, up to the first message.
func eachItem(list string, take func(item string) string) string {
	for more := true; more; {
		var item string
		item, list, more = strings.Cut(list, ",")
		if msg := take(item); msg != "" {
			return msg
		}
	}
	return ""
}

func readNumbers(in *Input, s string, v *Value) string {
	one := Input{Unit: in.Unit, Min: in.Min, Max: in.Max}
	msg := eachItem(s, func(item string) string {
		var r Value
		if msg := readNumber(&one, item, &r); msg != "" {
			return msg
		}
		v.List, v.Text = append(v.List, r.Num), listed(v.Text, r.Text)
		return ""
	})
	if msg == "" && len(v.List) > in.Most {
		return exact(float64(len(v.List))) + " items given; at most " + exact(float64(in.Most)) + " are accepted"
	}
	return msg
}

func readBundle(in *Input, s string, v *Value) string {
	all := 0
	return eachItem(s, func(item string) string {
		var strand Strand
		if msg := in.readStrand(strings.TrimSpace(item), &strand); msg != "" {
			return msg
		}
		if all += strand.Count; all > in.Most {
			return in.tooMany()
		}
		v.Strands, v.Text = append(v.Strands, strand), listed(v.Text, strand.Text)
		return ""
	})
}

// tooMany refuses more wires than a bundle may have.
func (in *Input) tooMany() string {
	most := exact(float64(in.Most))
	return "more than " + most + " wires; give 1 to " + most + " in all"
}

// readStrand reads one count×diameter: "7x2.4", "2 × 3.5 mm".
func (in *Input) readStrand(item string, s *Strand) string {
	const form = "; give count x diameter, such as 7x2.4mm"
	at, sign := strings.IndexByte(item, 'x'), 1
	if i := strings.IndexByte(item, 'X'); i >= 0 && (at < 0 || i < at) {
		at = i
	}
	if i := strings.Index(item, "×"); i >= 0 && (at < 0 || i < at) {
		at, sign = i, len("×")
	}
	if at < 0 {
		return "“" + item + "” has no count" + form
	}
	count := strings.TrimSpace(item[:at])
	if count == "" || digits(count, 0) < len(count) || whole(count) < 1 {
		return "“" + item + "” has no whole count of 1 or more" + form
	}
	if whole(count) > in.Most {
		return in.tooMany()
	}
	var v Value
	one := Input{Unit: in.Unit, Min: in.Min, Max: in.Max}
	if msg := readNumber(&one, item[at+sign:], &v); msg != "" {
		return msg
	}
	s.Count, s.Diameter = whole(count), v.Num
	s.Text = exact(float64(s.Count)) + " × " + v.Text
	return ""
}
