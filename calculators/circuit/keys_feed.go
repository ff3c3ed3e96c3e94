package circuit

import "baybook/calculators/calc"

// The keys of what feeds and switches. They stand as plain values, which cost
// a browser nothing to set up. A number is kept in SI units, a word as its text.

// vehicleKeys is the key of every part that can be there already.
var vehicleKeys = []Property{{Form: Flag, Input: calc.Input{Name: "vehicle", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: the vehicle has it already."}, yes: func(p Part) *bool { return &p.Basics().Vehicle }}}

// endKeys plug a part straight onto another, without a wire.
var endKeys = []Property{
	{Form: Terminal, Input: calc.Input{Name: "from", Help: "The end that its inlet is plugged onto."}},
	{Form: Terminal, Input: calc.Input{Name: "to", Help: "The end that its outlet is plugged onto."}},
}

var sourceKeys = []Property{
	{Live: true, Input: calc.Input{Name: "volts", Unit: "V", Min: 0.001, Max: 60, Default: "12.6", Help: "Open-circuit voltage: about 12.6 V at rest, 13.8 V to 14.4 V charging."}, num: func(p Part) *float64 { return &p.(*Source).Volts }},
	{Input: calc.Input{Name: "internal", Unit: "mohm", Min: 0, Max: 1e6, Default: "10", Help: "Resistance inside; a healthy starter battery has 5 mohm to 15 mohm (common practice)."}, num: func(p Part) *float64 { return &p.(*Source).Internal }},
	{Live: true, Input: calc.Input{Name: "feeds", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What it already feeds with the key on."}, num: func(p Part) *float64 { return &p.(*Source).Feeds }},
	{Live: true, Input: calc.Input{Name: "standing", Unit: "mA", Min: 0, Max: 5000, Default: "25", Help: "What the vehicle draws parked and asleep."}, num: func(p Part) *float64 { return &p.(*Source).Standing }},
	{Live: true, Input: calc.Input{Name: "capacity", Unit: "Ah", Min: 1, Max: 400, Help: "Printed on the battery; gives the days that it may stand."}, num: func(p Part) *float64 { return &p.(*Source).Capacity }},
	{Input: calc.Input{Name: "charge", Unit: "%", Min: 1, Max: 100, Default: "100", Help: "Charge when parked."}, num: func(p Part) *float64 { return &p.(*Source).Charge }},
	{Input: calc.Input{Name: "floor", Unit: "%", Min: 0, Max: 99, Default: "50", Help: "Lowest charge accepted."}, num: func(p Part) *float64 { return &p.(*Source).Floor }},
}

var fuseKeys = []Property{
	{Required: true, Live: true, Input: calc.Input{Name: "rating", Unit: "A", Min: 1, Max: 300, Help: "Printed on the fuse."}, num: func(p Part) *float64 { return &p.(*Fuse).Rating }},
	{Input: calc.Input{Name: "type", Kind: calc.Word, Words: []string{"C", "E", "F", "bolt-down"}, Default: "C", Help: "C medium blade, F small blade, E large blade (ISO 8820-3), or bolt-down."}, text: func(p Part) *string { return &p.(*Fuse).Type }},
	{Form: PartName, Input: calc.Input{Name: "taps", Help: "The fuse whose slot it shares: this is a fuse tap."}, text: func(p Part) *string { return &p.(*Fuse).Taps }},
	{Live: true, Input: calc.Input{Name: "feeds", Unit: "A", Min: 0, Max: 300, Default: "0", Help: "What the slot feeds already, measured."}, num: func(p Part) *float64 { return &p.(*Fuse).Feeds }},
	{Input: calc.Input{Name: "slot", Kind: calc.Word, Words: []string{"accessory", "lighting", "safety"}, Default: "accessory", Help: "What the vehicle uses the slot for."}, text: func(p Part) *string { return &p.(*Fuse).Slot }},
	{Input: calc.Input{Name: "resistance", Unit: "mohm", Min: 0, Max: 1000, Help: "Cold resistance; taken from typical values where it is left out."}, num: func(p Part) *float64 { return &p.(*Fuse).Ohms }},
}

var switchKeys = []Property{{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "10", Help: "Resistance closed."}, num: func(p Part) *float64 { return &p.(*Switch).Ohms }}}

var relayKeys = []Property{
	{Input: calc.Input{Name: "coil", Unit: "ohm", Min: 1, Max: 10000, Default: "85", Help: "Measured from 85 to 86."}, num: func(p Part) *float64 { return &p.(*Relay).Coil }},
	{Input: calc.Input{Name: "suppression", Kind: calc.Word, Words: []string{"diode", "zener", "resistor", "none"}, Default: "none", Help: "What is across the coil."}, text: func(p Part) *string { return &p.(*Relay).Suppression }},
	{Input: calc.Input{Name: "damping", Unit: "ohm", Min: 10, Max: 100000, Default: "680", Help: "Where that is a resistor, its ohms."}, num: func(p Part) *float64 { return &p.(*Relay).Damping }},
	{Input: calc.Input{Name: "pull_in", Unit: "V", Min: 0.5, Max: 40, Default: "8", Help: "Lowest coil voltage that closes it."}, num: func(p Part) *float64 { return &p.(*Relay).PullIn }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What the contact may carry."}, num: func(p Part) *float64 { return &p.(*Relay).Rating }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "5", Help: "Resistance of a closed contact."}, num: func(p Part) *float64 { return &p.(*Relay).Ohms }},
}

var connectorKeys = []Property{
	{Input: calc.Input{Name: "ways", Kind: calc.Count, Min: 1, Max: 64, Default: "1", Help: "How many contacts it has."}, whole: func(p Part) *int { return &p.(*Connector).Ways }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "5", Help: "Resistance of one mated contact."}, num: func(p Part) *float64 { return &p.(*Connector).Ohms }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What one contact may carry."}, num: func(p Part) *float64 { return &p.(*Connector).Rating }},
}
