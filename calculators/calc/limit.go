package calc

// A Limit is what a measured value is judged by. Either bound may be absent.
type Limit struct {
	HasMin, HasMax bool
	Min, Max       Quantity
	// Unit is the unit that a bare reading has.
	Unit Unit
}

// ParseLimit reads the query of a reading: min, max and unit. The message is
// empty where it is well formed.
func ParseLimit(pairs []Pair) (Limit, string) {
	var l Limit
	named := false
	for i, p := range pairs {
		for _, before := range pairs[:i] {
			if before.Key == p.Key {
				return Limit{}, p.Key + " is given twice; give it once"
			}
		}
		switch p.Key {
		case "min", "max":
			q, msg := ParseQuantity(p.Value)
			if msg != "" {
				return Limit{}, p.Key + ": " + msg
			}
			if p.Key == "min" {
				l.Min, l.HasMin = q, true
			} else {
				l.Max, l.HasMax = q, true
			}
			if !named {
				l.Unit = q.Unit
			}
		case "unit":
			u, ok := LookupUnit(p.Value)
			if !ok {
				return Limit{}, "unit: " + p.Value + " is not a known unit"
			}
			l.Unit, named = u, true
		default:
			return Limit{}, "“" + p.Key + "” is not known; a reading takes min, max and unit"
		}
	}
	for _, b := range [...]struct {
		has bool
		q   Quantity
	}{{l.HasMin, l.Min}, {l.HasMax, l.Max}} {
		if b.has && b.q.Unit.Dim != l.Unit.Dim {
			return Limit{}, b.q.String() + " is " + b.q.Unit.Dim.String() + ", but the reading is in " + l.Unit.Symbol
		}
	}
	if l.HasMin && l.HasMax && Over(Convert(l.Min.Value, l.Min.Unit, l.Max.Unit), l.Max.Value) {
		return Limit{}, "min " + l.Min.String() + " is above max " + l.Max.String()
	}
	return l, ""
}

// String says the limit in words: "11.8 V to 12.9 V", "at most 100 mV".
func (l Limit) String() string {
	switch {
	case l.HasMin && l.HasMax:
		return l.Min.String() + " to " + l.Max.String()
	case l.HasMin:
		return "at least " + l.Min.String()
	case l.HasMax:
		return "at most " + l.Max.String()
	}
	return "no limit"
}

// Judge compares a reading as typed with the limit: OK within, Stop outside.
// The text says the outcome; read is false where the reading cannot be read.
func (l Limit) Judge(typed string) (verdict Verdict, text string, read bool) {
	q, msg := ParseQuantity(typed)
	if msg != "" {
		return Check, msg, false
	}
	if q.Bare {
		q.Unit = l.Unit
	}
	if q.Unit.Dim != l.Unit.Dim {
		return Check, q.String() + " is " + q.Unit.Dim.String() + "; this reading is in " + l.Unit.Symbol, false
	}
	given := withUnit(q.Number, q.Unit.Symbol)
	if l.HasMin && Under(Convert(q.Value, q.Unit, l.Min.Unit), l.Min.Value) {
		return Stop, given + " is below " + l.Min.String(), true
	}
	if l.HasMax && Over(Convert(q.Value, q.Unit, l.Max.Unit), l.Max.Value) {
		return Stop, given + " is above " + l.Max.String(), true
	}
	if !l.HasMin && !l.HasMax {
		return OK, given + " noted", true
	}
	return OK, given + " is within " + l.String(), true
}
