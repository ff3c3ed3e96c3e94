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
	if msg := l.read(pairs); msg != "" {
		return Limit{}, msg
	}
	return l, ""
}

// read is ParseLimit into l.
func (l *Limit) read(pairs []Pair) string {
	named := false
	for i, p := range pairs {
		if has(pairs[:i], p.Key) {
			return p.Key + " is given twice; give it once"
		}
		switch p.Key {
		case "min", "max":
			q, has := &l.Max, &l.HasMax
			if p.Key == "min" {
				q, has = &l.Min, &l.HasMin
			}
			if msg := q.read(p.Value); msg != "" {
				return p.Key + ": " + msg
			}
			*has = true
			if !named {
				l.Unit = q.Unit
			}
		case "unit":
			u := unitOf(p.Value)
			if u == nil {
				return "unit: " + p.Value + " is not a known unit"
			}
			l.Unit, named = *u, true
		default:
			return "“" + p.Key + "” is not known; a reading takes min, max and unit"
		}
	}
	if l.HasMin && l.Min.Unit.Dim != l.Unit.Dim {
		return l.Min.is() + ", but the reading is in " + ShownUnit(l.Unit.Symbol)
	}
	if l.HasMax && l.Max.Unit.Dim != l.Unit.Dim {
		return l.Max.is() + ", but the reading is in " + ShownUnit(l.Unit.Symbol)
	}
	if l.HasMin && l.HasMax && Over(l.Min.in(&l.Max.Unit), l.Max.Value) {
		return "min " + l.Min.String() + " is above max " + l.Max.String()
	}
	return ""
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
	var q Quantity
	typed, msg := PointForComma(typed)
	if msg == "" {
		msg = q.read(typed)
	}
	if msg != "" {
		return Check, msg, false
	}
	if q.Bare {
		q.Unit = l.Unit
	}
	if q.Unit.Dim != l.Unit.Dim {
		return Check, q.is() + "; this reading is in " + ShownUnit(l.Unit.Symbol), false
	}
	given := q.String()
	if l.drops() && q.Value < 0 {
		return l.judgeSwapped(&q)
	}
	switch {
	case l.HasMin && Under(q.in(&l.Min.Unit), l.Min.Value):
		return Stop, given + " is below " + l.Min.String(), true
	case l.HasMax && Over(q.in(&l.Max.Unit), l.Max.Value):
		return Stop, given + " is above " + l.Max.String(), true
	case !l.HasMin && !l.HasMax:
		return OK, given + " noted", true
	}
	return OK, given + " is within " + l.String(), true
}

// drops reports whether the limit is on a voltage drop, whose sign does not
// count: a voltage with a maximum and no minimum.
func (l *Limit) drops() bool { return l.HasMax && !l.HasMin && l.Unit.Dim == Voltage }

// judgeSwapped judges a voltage drop that was read with the leads swapped, by
// its absolute value.
func (l *Limit) judgeSwapped(q *Quantity) (verdict Verdict, text string, read bool) {
	given := q.String()
	if Over(-q.in(&l.Max.Unit), l.Max.Value) {
		return Stop, given + ": by its size it is above " + l.Max.String() + " (leads swapped?)", true
	}
	return Check, given + ": leads swapped? By its size it is within " + l.String(), true
}
