package circuit

import "baybook/calculators/calc"

// number makes a key that takes a quantity; scale turns the unit into SI.
func number(name, unit string, least, most float64, standard, help string, at func(*Element) *float64) Property {
	u, _ := calc.LookupUnit(unit)
	return Property{
		Input: calc.Input{Name: name, Unit: unit, Min: least, Max: most, Default: standard, Help: help},
		set:   func(e *Element, v calc.Value) { *at(e) = v.Num*u.Base + u.Zero },
	}
}

// count makes a key that takes a whole number.
func count(name string, least, most float64, standard, help string, at func(*Element) *int) Property {
	return Property{
		Input: calc.Input{Name: name, Kind: calc.Count, Min: least, Max: most, Default: standard, Help: help},
		set:   func(e *Element, v calc.Value) { *at(e) = int(v.Num) },
	}
}

// word makes a key that takes one of a few words.
func word(name string, words []string, standard, help string, at func(*Element) *string) Property {
	return Property{
		Input: calc.Input{Name: name, Kind: calc.Word, Words: words, Default: standard, Help: help},
		set:   func(e *Element, v calc.Value) { *at(e) = v.Text },
	}
}

// text makes a key of another form whose value is kept as words.
func text(form Form, name, help string, at func(*Element) *string) Property {
	return Property{Form: form, Input: calc.Input{Name: name, Help: help},
		set: func(e *Element, v calc.Value) { *at(e) = v.Text }}
}

// flag makes a key that takes yes or no.
func flag(name, help string, at func(*Element) *bool) Property {
	return Property{Form: Flag, Input: calc.Input{Name: name, Kind: calc.Word, Words: []string{"yes", "no"}, Help: help},
		set: func(e *Element, v calc.Value) { *at(e) = v.Text == "yes" }}
}

// needed makes a key required, live one that may be changed in the drawing.
func needed(p Property) Property { p.Required = true; return p }
func live(p Property) Property   { p.Live = true; return p }

var vehicleKey = flag("vehicle", "yes: the vehicle has it already.", func(e *Element) *bool { return &e.Vehicle })

// endKeys plug a part straight onto another, without a wire.
var endKeys = []Property{
	{Form: Terminal, Input: calc.Input{Name: "from", Help: "The end that its inlet is plugged onto."}},
	{Form: Terminal, Input: calc.Input{Name: "to", Help: "The end that its outlet is plugged onto."}},
}

// with adds the keys that many classes share.
func with(keys []Property, more ...[]Property) []Property {
	for _, m := range more {
		keys = append(keys, m...)
	}
	return append(keys, vehicleKey)
}

// contact is the resistance of closed metal, common practice.
func contact(name, standard, help string) Property {
	return number(name, "mohm", 0, 10000, standard, help, func(e *Element) *float64 { return &e.Ohms })
}

var sourceKeys = with([]Property{
	live(number("volts", "V", 0.001, 60, "12.6", "Open-circuit voltage: about 12.6 V at rest, 13.8 V to 14.4 V charging.", func(e *Element) *float64 { return &e.Volts })),
	number("internal", "mohm", 0, 1e6, "10", "Resistance inside; a healthy starter battery has 5 mohm to 15 mohm (common practice).", func(e *Element) *float64 { return &e.Internal }),
	live(number("feeds", "A", 0, 500, "0", "What it already feeds with the key on.", func(e *Element) *float64 { return &e.Feeds })),
	live(number("standing", "mA", 0, 5000, "25", "What the vehicle draws parked and asleep.", func(e *Element) *float64 { return &e.Standing })),
	live(number("capacity", "Ah", 1, 400, "", "Printed on the battery; gives the days that it may stand.", func(e *Element) *float64 { return &e.Capacity })),
	number("charge", "%", 1, 100, "100", "Charge when parked.", func(e *Element) *float64 { return &e.Charge }),
	number("floor", "%", 0, 99, "50", "Lowest charge accepted.", func(e *Element) *float64 { return &e.Floor }),
}, endKeys)

var fuseKeys = with([]Property{
	needed(live(number("rating", "A", 1, 300, "", "Printed on the fuse.", func(e *Element) *float64 { return &e.Rating }))),
	word("type", []string{"C", "E", "F", "bolt-down"}, "C", "C medium blade, F small blade, E large blade (ISO 8820-3), or bolt-down.", func(e *Element) *string { return &e.Type }),
	text(PartName, "taps", "The fuse whose slot it shares: this is a fuse tap.", func(e *Element) *string { return &e.Taps }),
	live(number("feeds", "A", 0, 300, "0", "What the slot feeds already, measured.", func(e *Element) *float64 { return &e.Feeds })),
	word("slot", []string{"accessory", "lighting", "safety"}, "accessory", "What the vehicle uses the slot for.", func(e *Element) *string { return &e.Slot }),
	number("resistance", "mohm", 0, 1000, "", "Cold resistance; taken from typical values where it is left out.", func(e *Element) *float64 { return &e.Ohms }),
}, endKeys)

var switchKeys = with([]Property{contact("contact", "10", "Resistance closed.")}, endKeys)

var relayKeys = with([]Property{
	number("coil", "ohm", 1, 10000, "85", "Measured from 85 to 86.", func(e *Element) *float64 { return &e.Coil }),
	word("suppression", []string{"diode", "zener", "resistor", "none"}, "none", "What is across the coil.", func(e *Element) *string { return &e.Suppression }),
	number("damping", "ohm", 10, 100000, "680", "Where that is a resistor, its ohms.", func(e *Element) *float64 { return &e.Damping }),
	number("pull_in", "V", 0.5, 40, "8", "Lowest coil voltage that closes it.", func(e *Element) *float64 { return &e.PullIn }),
	number("rating", "A", 0, 500, "0", "What the contact may carry.", func(e *Element) *float64 { return &e.Rating }),
	contact("contact", "5", "Resistance of a closed contact."),
})

var connectorKeys = with([]Property{
	count("ways", 1, 64, "1", "How many contacts it has.", func(e *Element) *int { return &e.Count }),
	contact("contact", "5", "Resistance of one mated contact."),
	number("rating", "A", 0, 500, "0", "What one contact may carry.", func(e *Element) *float64 { return &e.Rating }),
})

var loadKeys = with([]Property{
	live(number("current", "A", 0.0001, 500, "", "What it draws, off the data sheet or a clamp meter.", func(e *Element) *float64 { return &e.Current })),
	live(number("power", "W", 0.001, 10000, "", "Constant power, as a supply with a converter has it.", func(e *Element) *float64 { return &e.Power })),
	live(number("ohms", "ohm", 0.001, 1e7, "", "Resistance, as a heater or a resistor has it.", func(e *Element) *float64 { return &e.Ohms })),
	word("type", []string{"device", "lamp", "motor", "heater", "resistor"}, "device", "How it is drawn; a resistor passes current on to another load.", func(e *Element) *string { return &e.Type }),
	number("inrush", "A", 0, 2000, "0", "Surge when it is switched on.", func(e *Element) *float64 { return &e.Inrush }),
	number("surge", "s", 0.001, 10, "0.1", "How long the surge lasts.", func(e *Element) *float64 { return &e.Surge }),
	live(number("sleeps", "mA", 0, 20000, "0", "What it draws asleep or switched off.", func(e *Element) *float64 { return &e.Sleeps })),
	number("least", "V", 0, 60, "0", "Lowest voltage that it works at.", func(e *Element) *float64 { return &e.Least }),
	number("drop", "%", 0.1, 100, "", "A limit of drop of its own.", func(e *Element) *float64 { return &e.Drop }),
	flag("signal", "yes: a camera, radio or sensor whose ground must be quiet.", func(e *Element) *bool { return &e.Signal }),
}, endKeys)

var ledKeys = with([]Property{
	number("forward", "V", 0.5, 60, "2", "Forward voltage of one LED.", func(e *Element) *float64 { return &e.Forward }),
	count("count", 1, 200, "1", "LEDs in series in a string.", func(e *Element) *int { return &e.Count }),
	needed(live(number("resistor", "ohm", 0.01, 1e6, "", "In series with each string.", func(e *Element) *float64 { return &e.Ohms }))),
	count("strings", 1, 500, "1", "Strings side by side.", func(e *Element) *int { return &e.Strings }),
	number("least", "V", 0, 60, "0", "Lowest voltage that they are bright enough at.", func(e *Element) *float64 { return &e.Least }),
	number("drop", "%", 0.1, 100, "", "A limit of drop of its own.", func(e *Element) *float64 { return &e.Drop }),
}, endKeys)
