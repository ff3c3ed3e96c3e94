package circuit

import "baybook/calculators/calc"

// The keys of what feeds and switches. They stand as plain values, which cost
// a browser nothing to set up. A number is kept in SI units, a word as its text.

// partKeys are the keys of every part of the drawing.
var partKeys = []Property{
	{Form: FreeText, Input: calc.Input{Name: "label", Help: "Words that stand beside its name."}, text: func(p Part) *string { return &p.Basics().Label }},
	{Form: PointName, Input: calc.Input{Name: "harness", Help: "The harness that it belongs to, drawn as a broken line around all its parts."}, text: func(p Part) *string { return &p.Basics().Harness }},
	{Form: Flag, Input: calc.Input{Name: "vehicle", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: the vehicle has it already."}, yes: func(p Part) *bool { return &p.Basics().Vehicle }},
}

var alternatorKeys = []Property{
	{Live: true, Input: calc.Input{Name: "volts", Unit: "V", Min: 1, Max: 60, Default: "14.2", Help: "What its regulator holds."}, num: func(p Part) *float64 { return &p.(*Alternator).Volts }},
	{Required: true, Live: true, Input: calc.Input{Name: "current", Unit: "A", Min: 1, Max: 1000, Help: "The most that it gives, hot."}, num: func(p Part) *float64 { return &p.(*Alternator).Amps }},
	{Input: calc.Input{Name: "internal", Unit: "mohm", Min: 0.1, Max: 1000, Default: "5", Help: "How far its voltage falls for each ampere."}, num: func(p Part) *float64 { return &p.(*Alternator).Ohms }},
}

var converterKeys = []Property{
	{Required: true, Live: true, Input: calc.Input{Name: "volts", Unit: "V", Min: 0.5, Max: 400, Help: "What its output holds."}, num: func(p Part) *float64 { return &p.(*Converter).Volts }},
	{Required: true, Live: true, Input: calc.Input{Name: "current", Unit: "A", Min: 0.001, Max: 500, Help: "The most that its output gives."}, num: func(p Part) *float64 { return &p.(*Converter).Amps }},
	{Input: calc.Input{Name: "efficiency", Unit: "%", Min: 10, Max: 100, Default: "85", Help: "Power out by power in."}, num: func(p Part) *float64 { return &p.(*Converter).Efficiency }},
	{Input: calc.Input{Name: "idle", Unit: "W", Min: 0, Max: 100, Default: "0.5", Help: "What it uses itself while it works."}, num: func(p Part) *float64 { return &p.(*Converter).Idle }},
	{Input: calc.Input{Name: "internal", Unit: "mohm", Min: 0.1, Max: 10000, Default: "5", Help: "How far its output falls for each ampere."}, num: func(p Part) *float64 { return &p.(*Converter).Ohms }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "9", Help: "Lowest voltage at its input that it works at."}, num: func(p Part) *float64 { return &p.(*Converter).Least }},
	{Input: calc.Input{Name: "sleeps", Unit: "mA", Min: 0, Max: 20000, Default: "0", Help: "What it draws switched off or parked asleep."}, num: func(p Part) *float64 { return &p.(*Converter).Sleeps }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own, as a share or in V."}, num: func(p Part) *float64 { return &p.(*Converter).Drop.Share }, volts: func(p Part) *float64 { return &p.(*Converter).Drop.Volts }},
	{Form: Flag, Input: calc.Input{Name: "isolated", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: its two negative terminals are apart; else they are one."}, yes: func(p Part) *bool { return &p.(*Converter).Isolated }},
}

var diodeKeys = []Property{
	{Input: calc.Input{Name: "forward", Unit: "V", Min: 0, Max: 5, Default: "0.7", Help: "What it drops: 0.7 V, a Schottky diode 0.3 V."}, num: func(p Part) *float64 { return &p.(*Diode).Forward }},
	{Input: calc.Input{Name: "resistance", Unit: "mohm", Min: 0.01, Max: 100000, Default: "10", Help: "In series with that."}, num: func(p Part) *float64 { return &p.(*Diode).Ohms }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What it may carry."}, num: func(p Part) *float64 { return &p.(*Diode).Rating }},
}

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
	{Input: calc.Input{Name: "type", Kind: calc.Word, Words: []string{"C", "E", "F", "bolt-down", "breaker"}, Default: "C", Help: "C medium blade, F small blade, E large blade (ISO 8820-3), bolt-down, or a circuit breaker."}, text: func(p Part) *string { return &p.(*Fuse).Type }},
	{Form: PartName, Input: calc.Input{Name: "taps", Help: "The fuse whose slot it shares: this is a fuse tap."}, text: func(p Part) *string { return &p.(*Fuse).Taps }},
	{Live: true, Input: calc.Input{Name: "feeds", Unit: "A", Min: 0, Max: 300, Default: "0", Help: "What the slot feeds already, measured."}, num: func(p Part) *float64 { return &p.(*Fuse).Feeds }},
	{Input: calc.Input{Name: "slot", Kind: calc.Word, Words: []string{"accessory", "lighting", "safety"}, Default: "accessory", Help: "What the vehicle uses the slot for."}, text: func(p Part) *string { return &p.(*Fuse).Slot }},
	{Input: calc.Input{Name: "resistance", Unit: "mohm", Min: 0, Max: 1000, Help: "Cold resistance; taken from typical values where it is left out."}, num: func(p Part) *float64 { return &p.(*Fuse).Ohms }},
}

var switchKeys = []Property{
	{Input: calc.Input{Name: "type", Kind: calc.Word, Words: []string{"switch", "button", "isolator"}, Default: "switch", Help: "A button springs back; an isolator cuts the battery off."}, text: func(p Part) *string { return &p.(*Switch).Type }},
	{Input: calc.Input{Name: "ways", Kind: calc.Count, Min: 1, Max: 12, Default: "1", Help: "How many contacts it has; with more than one they are named 1, 2 and so on."}, whole: func(p Part) *int { return &p.(*Switch).Ways }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 1000, Default: "0", Help: "What a contact may carry."}, num: func(p Part) *float64 { return &p.(*Switch).Rating }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "10", Help: "Resistance closed."}, num: func(p Part) *float64 { return &p.(*Switch).Ohms }},
}

var relayKeys = []Property{
	{Form: Terminal, Input: calc.Input{Name: "30", Help: "What its terminal 30 is plugged onto; so with 85, 86, 87 and 87a."}},
	{Form: Terminal, Input: calc.Input{Name: "85", Help: "The same, such as the ground that its foot stands on."}},
	{Form: Terminal, Input: calc.Input{Name: "86", Help: "The same."}},
	{Form: Terminal, Input: calc.Input{Name: "87", Help: "The same."}},
	{Form: Terminal, Input: calc.Input{Name: "87a", Help: "The same."}},
	{Input: calc.Input{Name: "coil", Unit: "ohm", Min: 1, Max: 10000, Default: "85", Help: "Measured from 85 to 86."}, num: func(p Part) *float64 { return &p.(*Relay).Coil }},
	{Input: calc.Input{Name: "suppression", Kind: calc.Word, Words: []string{"diode", "zener", "resistor", "none"}, Default: "none", Help: "What is across the coil."}, text: func(p Part) *string { return &p.(*Relay).Suppression }},
	{Input: calc.Input{Name: "damping", Unit: "ohm", Min: 10, Max: 100000, Default: "680", Help: "Where that is a resistor, its ohms."}, num: func(p Part) *float64 { return &p.(*Relay).Damping }},
	{Input: calc.Input{Name: "pull_in", Unit: "V", Min: 0.5, Max: 40, Default: "8", Help: "Lowest coil voltage that closes it."}, num: func(p Part) *float64 { return &p.(*Relay).PullIn }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What the contact may carry."}, num: func(p Part) *float64 { return &p.(*Relay).Rating }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "5", Help: "Resistance of a closed contact."}, num: func(p Part) *float64 { return &p.(*Relay).Ohms }},
}

var connectorKeys = []Property{
	{Input: calc.Input{Name: "ways", Kind: calc.Count, Min: 1, Max: 64, Default: "1", Help: "How many contacts it has."}, whole: func(p Part) *int { return &p.(*Connector).Ways }},
	{Form: FreeText, Input: calc.Input{Name: "part", Help: "What its maker calls it, for the parts list."}, text: func(p Part) *string { return &p.(*Connector).Model }},
	{Form: Quantities, Input: calc.Input{Name: "each", Unit: "mohm", Min: 0, Max: 10000, Help: "Resistance of each way in turn, where they differ."}, list: func(p Part) *[]float64 { return &p.(*Connector).Each }},
	{Input: calc.Input{Name: "contact", Unit: "mohm", Max: 10000, Default: "5", Help: "Resistance of one mated contact."}, num: func(p Part) *float64 { return &p.(*Connector).Ohms }},
	{Input: calc.Input{Name: "rating", Unit: "A", Min: 0, Max: 500, Default: "0", Help: "What one contact may carry."}, num: func(p Part) *float64 { return &p.(*Connector).Rating }},
}
