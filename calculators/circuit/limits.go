package circuit

import "baybook/calculators/calc"

// A limitKey is one key of the section limits.
type limitKey struct {
	calc.Input
	at func(*Limits) *float64
	// volts is where a limit goes that is given in V instead of in %.
	volts func(*Limits) *float64
}

// limitKeys are the limits that a circuit may set for itself. The distances
// are those of 33 CFR 183.455: 7 in bare, 40 in covered.
var limitKeys = []limitKey{
	{calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Default: "3",
		Help: "Share of the supply, or volts, that may be lost on the way there and back: 3 % where it matters, 10 % at most (ABYC E-11)."}, func(l *Limits) *float64 { return &l.Drop.Share }, func(l *Limits) *float64 { return &l.Drop.Volts }},
	{calc.Input{Name: "ambient", Unit: "C", Min: -40, Max: 100, Default: "40",
		Help: "Hottest air around the wires."}, func(l *Limits) *float64 { return &l.Ambient }, nil},
	{calc.Input{Name: "temperature", Unit: "C", Min: -40, Max: 125, Default: "20",
		Help: "Of the conductors when drops are computed."}, func(l *Limits) *float64 { return &l.Temperature }, nil},
	{calc.Input{Name: "bare", Unit: "mm", Min: 0, Max: 5000, Default: "178",
		Help: "How far a bare wire may run from the source to its fuse."}, func(l *Limits) *float64 { return &l.Bare }, nil},
	{calc.Input{Name: "sheathed", Unit: "mm", Min: 0, Max: 5000, Default: "1016",
		Help: "The same for a wire in a sheath of its own."}, func(l *Limits) *float64 { return &l.Covered }, nil},
	{calc.Input{Name: "parked", Unit: "d", Min: 0, Max: 365, Default: "14",
		Help: "Longest time parked."}, func(l *Limits) *float64 { return &l.Parked }, nil},
	{calc.Input{Name: "self_discharge", Unit: "%", Min: 0, Max: 30, Default: "3",
		Help: "The battery's own loss a month."}, func(l *Limits) *float64 { return &l.SelfDischarge }, nil},
	{calc.Input{Name: "allowance", Unit: "%", Min: 0, Max: 100, Default: "5",
		Help: "Added to a wire's length when it is cut, for bends that the drawing does not know (common practice)."}, func(l *Limits) *float64 { return &l.Allowance }, nil},
	{calc.Input{Name: "spare", Unit: "mm", Min: 0, Max: 1000, Default: "50",
		Help: "Added at each end for the terminal and a second try at it (common practice)."}, func(l *Limits) *float64 { return &l.Spare }, nil},
}

// LimitKeys are the keys of the section limits, for those who explain them.
func LimitKeys() []calc.Input {
	var list []calc.Input
	for i := range limitKeys {
		list = append(list, limitKeys[i].Input)
	}
	return list
}

// limitScale turns the unit of a limit into what Limits holds: days and
// percent a month stay as they are written.
func limitScale(k *limitKey, v float64) float64 {
	if k.Unit == "d" || k.Name == "self_discharge" {
		return v
	}
	u, _ := calc.LookupUnit(k.Unit)
	return v*u.Base + u.Zero
}

// limits reads the section limits, with the standard values for the rest.
func (b *builder) limits() {
	for i := range limitKeys {
		k := &limitKeys[i]
		v, _ := k.Read(k.Default)
		*k.at(&b.n.Limits) = limitScale(k, v.Num)
	}
	for _, given := range b.draft.Limits {
		k := limitNamed(given.Name)
		if k == nil {
			b.unknownKey(Problem{In: InLimits, Key: given.Name}, "limits", limitNames())
			continue
		}
		if k.volts != nil && inVolts(given.Value) {
			v, msg := dropVolts.Read(given.Value)
			if msg != "" {
				b.refuse(Problem{In: InLimits, Key: given.Name, Message: given.Name + ": " + msg, Do: "give " + asAdvice(k.Help)})
			}
			*k.volts(&b.n.Limits) = v.Num
			continue
		}
		v, msg := k.Read(given.Value)
		if msg != "" {
			b.refuse(Problem{In: InLimits, Key: given.Name, Message: given.Name + ": " + msg, Do: "give " + asAdvice(k.Help)})
			continue
		}
		*k.at(&b.n.Limits) = limitScale(k, v.Num)
	}
}

func limitNamed(name string) *limitKey {
	for i := range limitKeys {
		if limitKeys[i].Name == name {
			return &limitKeys[i]
		}
	}
	return nil
}

// limitNames lists the keys of the section limits.
func limitNames() []string {
	var names []string
	for i := range limitKeys {
		names = append(names, limitKeys[i].Name)
	}
	return names
}
