package circuit

import "baybook/calculators/calc"

// The keys of each class stand here as plain values, which cost a browser
// nothing to set up. A number is kept in SI units, a word as its text.

// vehicleKeys is the key of every part that can be there already.
var vehicleKeys = []Property{{Form: Flag, Input: calc.Input{Name: "vehicle", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: the vehicle has it already."}, yes: func(e *Element) *bool { return &e.Vehicle }}}

// endKeys plug a part straight onto another, without a wire.
var endKeys = []Property{
	{Form: Terminal, Input: calc.Input{Name: "from", Help: "The end that its inlet is plugged onto."}},
	{Form: Terminal, Input: calc.Input{Name: "to", Help: "The end that its outlet is plugged onto."}},
}

var sourceKeys = []Property{
	{Live: true, Input: calc.Input{Name: "volts", Unit: "V", Min: 0.001, Max: 60, Default: "12.6", Help: "Open-circuit voltage: about 12.6 V at rest, 13.8 V to 14.4 V charging."}, num: func(e *Element) *float64 { return &e.Volts }},
	{Input: calc.Input{Name: "internal", Unit: "mohm", Min: 0, Max: 1e6, Default: "10", Help: "Resistance inside; a healthy starter battery has 5 mohm to 15 mohm (common practice)."}, num: func(e *Element) *float64 { return &e.Internal }},
	{Live: true, Input: calc.Input{Name: "feeds", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What it already feeds with the key on."}, num: func(e *Element) *float64 { return &e.Feeds }},
	{Live: true, Input: calc.Input{Name: "standing", Unit: "mA", Min: 0, Max: 5000, Default: "25", Help: "What the vehicle draws parked and asleep."}, num: func(e *Element) *float64 { return &e.Standing }},
	{Live: true, Input: calc.Input{Name: "capacity", Unit: "Ah", Min: 1, Max: 400, Help: "Printed on the battery; gives the days that it may stand."}, num: func(e *Element) *float64 { return &e.Capacity }},
	{Input: calc.Input{Name: "charge", Unit: "%", Min: 1, Max: 100, Default: "100", Help: "Charge when parked."}, num: func(e *Element) *float64 { return &e.Charge }},
	{Input: calc.Input{Name: "floor", Unit: "%", Min: 0, Max: 99, Default: "50", Help: "Lowest charge accepted."}, num: func(e *Element) *float64 { return &e.Floor }},
}

var fuseKeys = []Property{
	{Required: true, Live: true, Input: calc.Input{Name: "rating", Unit: "A", Min: 1, Max: 300, Help: "Printed on the fuse."}, num: func(e *Element) *float64 { return &e.Rating }},
	{Input: calc.Input{Name: "type", Kind: calc.Word, Words: []string{"C", "E", "F", "bolt-down"}, Default: "C", Help: "C medium blade, F small blade, E large blade (ISO 8820-3), or bolt-down."}, text: func(e *Element) *string { return &e.Type }},
	{Form: PartName, Input: calc.Input{Name: "taps", Help: "The fuse whose slot it shares: this is a fuse tap."}, text: func(e *Element) *string { return &e.Taps }},
	{Live: true, Input: calc.Input{Name: "feeds", Unit: "A", Min: 0, Max: 300, Default: "0", Help: "What the slot feeds already, measured."}, num: func(e *Element) *float64 { return &e.Feeds }},
	{Input: calc.Input{Name: "slot", Kind: calc.Word, Words: []string{"accessory", "lighting", "safety"}, Default: "accessory", Help: "What the vehicle uses the slot for."}, text: func(e *Element) *string { return &e.Slot }},
	{Input: calc.Input{Name: "resistance", Unit: "mohm", Min: 0, Max: 1000, Help: "Cold resistance; taken from typical values where it is left out."}, num: func(e *Element) *float64 { return &e.Ohms }},
}

var switchKeys = []Property{{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "10", Help: "Resistance closed."}, num: func(e *Element) *float64 { return &e.Ohms }}}

var relayKeys = []Property{
	{Input: calc.Input{Name: "coil", Unit: "ohm", Min: 1, Max: 10000, Default: "85", Help: "Measured from 85 to 86."}, num: func(e *Element) *float64 { return &e.Coil }},
	{Input: calc.Input{Name: "suppression", Kind: calc.Word, Words: []string{"diode", "zener", "resistor", "none"}, Default: "none", Help: "What is across the coil."}, text: func(e *Element) *string { return &e.Suppression }},
	{Input: calc.Input{Name: "damping", Unit: "ohm", Min: 10, Max: 100000, Default: "680", Help: "Where that is a resistor, its ohms."}, num: func(e *Element) *float64 { return &e.Damping }},
	{Input: calc.Input{Name: "pull_in", Unit: "V", Min: 0.5, Max: 40, Default: "8", Help: "Lowest coil voltage that closes it."}, num: func(e *Element) *float64 { return &e.PullIn }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What the contact may carry."}, num: func(e *Element) *float64 { return &e.Rating }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "5", Help: "Resistance of a closed contact."}, num: func(e *Element) *float64 { return &e.Ohms }},
}

var connectorKeys = []Property{
	{Input: calc.Input{Name: "ways", Kind: calc.Count, Min: 1, Max: 64, Default: "1", Help: "How many contacts it has."}, whole: func(e *Element) *int { return &e.Count }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "5", Help: "Resistance of one mated contact."}, num: func(e *Element) *float64 { return &e.Ohms }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What one contact may carry."}, num: func(e *Element) *float64 { return &e.Rating }},
}

var loadKeys = []Property{
	{Live: true, Input: calc.Input{Name: "current", Unit: "A", Min: 0.0001, Max: 500, Help: "What it draws, off the data sheet or a clamp meter."}, num: func(e *Element) *float64 { return &e.Current }},
	{Live: true, Input: calc.Input{Name: "power", Unit: "W", Min: 0.001, Max: 10000, Help: "Constant power, as a supply with a converter has it."}, num: func(e *Element) *float64 { return &e.Power }},
	{Live: true, Input: calc.Input{Name: "ohms", Unit: "ohm", Min: 0.001, Max: 1e7, Help: "Resistance, as a heater or a resistor has it."}, num: func(e *Element) *float64 { return &e.Ohms }},
	{Input: calc.Input{Name: "type", Kind: calc.Word, Words: []string{"device", "lamp", "motor", "heater", "resistor"}, Default: "device", Help: "How it is drawn; a resistor passes current on to another load."}, text: func(e *Element) *string { return &e.Type }},
	{Input: calc.Input{Name: "inrush", Unit: "A", Min: 0, Max: 2000, Default: "0", Help: "Surge when it is switched on."}, num: func(e *Element) *float64 { return &e.Inrush }},
	{Input: calc.Input{Name: "surge", Unit: "s", Min: 0.001, Max: 10, Default: "0.1", Help: "How long the surge lasts."}, num: func(e *Element) *float64 { return &e.Surge }},
	{Live: true, Input: calc.Input{Name: "sleeps", Unit: "mA", Min: 0, Max: 20000, Default: "0", Help: "What it draws asleep or switched off."}, num: func(e *Element) *float64 { return &e.Sleeps }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "Lowest voltage that it works at."}, num: func(e *Element) *float64 { return &e.Least }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own."}, num: func(e *Element) *float64 { return &e.Drop }},
	{Form: Flag, Input: calc.Input{Name: "signal", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: a camera, radio or sensor whose ground must be quiet."}, yes: func(e *Element) *bool { return &e.Signal }},
}

var ledKeys = []Property{
	{Input: calc.Input{Name: "forward", Unit: "V", Min: 0.5, Max: 60, Default: "2", Help: "Forward voltage of one LED."}, num: func(e *Element) *float64 { return &e.Forward }},
	{Input: calc.Input{Name: "count", Kind: calc.Count, Min: 1, Max: 200, Default: "1", Help: "LEDs in series in a string."}, whole: func(e *Element) *int { return &e.Count }},
	{Required: true, Live: true, Input: calc.Input{Name: "resistor", Unit: "ohm", Min: 0.01, Max: 1e6, Help: "In series with each string."}, num: func(e *Element) *float64 { return &e.Ohms }},
	{Input: calc.Input{Name: "strings", Kind: calc.Count, Min: 1, Max: 500, Default: "1", Help: "Strings side by side."}, whole: func(e *Element) *int { return &e.Strings }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "Lowest voltage that they are bright enough at."}, num: func(e *Element) *float64 { return &e.Least }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own."}, num: func(e *Element) *float64 { return &e.Drop }},
}
