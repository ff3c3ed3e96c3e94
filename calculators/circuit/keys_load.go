package circuit

import "baybook/calculators/calc"

// The keys of what uses current.

var loadKeys = []Property{
	{Live: true, Input: calc.Input{Name: "count", Kind: calc.Count, Min: 1, Max: 200, Default: "1", Help: "How many of them stand there side by side; what they draw is given for one."}, whole: func(p Part) *int { return &p.(*Load).Count }},
	{Live: true, Input: calc.Input{Name: "current", Unit: "A", Min: 0.0001, Max: 500, Help: "What it draws, off the data sheet or a clamp meter."}, num: func(p Part) *float64 { return &p.(*Load).Current }},
	{Live: true, Input: calc.Input{Name: "power", Unit: "W", Min: 0.001, Max: 10000, Help: "Constant power, as a supply with a converter has it."}, num: func(p Part) *float64 { return &p.(*Load).Power }},
	{Live: true, Input: calc.Input{Name: "ohms", Unit: "ohm", Min: 0.001, Max: 1e7, Help: "Resistance, as a heater or a resistor has it."}, num: func(p Part) *float64 { return &p.(*Load).Ohms }},
	{Input: calc.Input{Name: "type", Kind: calc.Word, Words: []string{"device", "lamp", "motor", "heater", "resistor"}, Default: "device", Help: "How it is drawn; a resistor passes current on to another load."}, text: func(p Part) *string { return &p.(*Load).Type }},
	{Input: calc.Input{Name: "inrush", Unit: "A", Min: 0, Max: 2000, Default: "0", Help: "Surge when it is switched on."}, num: func(p Part) *float64 { return &p.(*Load).Inrush }},
	{Input: calc.Input{Name: "surge", Unit: "s", Min: 0.001, Max: 10, Default: "0.1", Help: "How long the surge lasts."}, num: func(p Part) *float64 { return &p.(*Load).Surge }},
	{Live: true, Input: calc.Input{Name: "sleeps", Unit: "mA", Min: 0, Max: 20000, Default: "0", Help: "What it draws asleep or switched off."}, num: func(p Part) *float64 { return &p.(*Load).Sleeps }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "Lowest voltage that it works at."}, num: func(p Part) *float64 { return &p.(*Load).Least }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own, as a share or in V."}, num: func(p Part) *float64 { return &p.(*Load).Drop.Share }, volts: func(p Part) *float64 { return &p.(*Load).Drop.Volts }},
	{Form: Flag, Input: calc.Input{Name: "signal", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: a camera, radio or sensor whose ground must be quiet."}, yes: func(p Part) *bool { return &p.(*Load).Signal }},
}

var ledKeys = []Property{
	{Input: calc.Input{Name: "forward", Unit: "V", Min: 0.5, Max: 60, Default: "2", Help: "Forward voltage of one LED."}, num: func(p Part) *float64 { return &p.(*LEDs).Forward }},
	{Input: calc.Input{Name: "count", Kind: calc.Count, Min: 1, Max: 200, Default: "1", Help: "LEDs in series in a string."}, whole: func(p Part) *int { return &p.(*LEDs).Count }},
	{Required: true, Live: true, Input: calc.Input{Name: "resistor", Unit: "ohm", Min: 0.01, Max: 1e6, Help: "In series with each string."}, num: func(p Part) *float64 { return &p.(*LEDs).Ohms }},
	{Input: calc.Input{Name: "strings", Kind: calc.Count, Min: 1, Max: 500, Default: "1", Help: "Strings side by side."}, whole: func(p Part) *int { return &p.(*LEDs).Strings }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "Lowest voltage that they are bright enough at."}, num: func(p Part) *float64 { return &p.(*LEDs).Least }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own, as a share or in V."}, num: func(p Part) *float64 { return &p.(*LEDs).Drop.Share }, volts: func(p Part) *float64 { return &p.(*LEDs).Drop.Volts }},
}

var amplifierKeys = []Property{
	{Live: true, Input: calc.Input{Name: "current", Unit: "A", Min: 0.0001, Max: 500, Help: "What its supply draws on average at the loudest use."}, num: func(p Part) *float64 { return &p.(*Amplifier).Current }},
	{Live: true, Input: calc.Input{Name: "power", Unit: "W", Min: 0.001, Max: 10000, Help: "The same as a constant power."}, num: func(p Part) *float64 { return &p.(*Amplifier).Power }},
	{Input: calc.Input{Name: "output", Unit: "W", Min: 0.01, Max: 5000, Default: "50", Help: "Power of one output into its rated load."}, num: func(p Part) *float64 { return &p.(*Amplifier).Output }},
	{Input: calc.Input{Name: "into", Unit: "ohm", Min: 0.5, Max: 32, Default: "4", Help: "The load that its output is rated at."}, num: func(p Part) *float64 { return &p.(*Amplifier).Ohms }},
	{Input: calc.Input{Name: "least_load", Unit: "ohm", Min: 0.25, Max: 32, Default: "2", Help: "The least load that an output bears."}, num: func(p Part) *float64 { return &p.(*Amplifier).LeastLoad }},
	{Input: calc.Input{Name: "channels", Kind: calc.Count, Min: 0, Max: 12, Default: "2", Help: "How many outputs it has, 1+ and 1- and so on."}, whole: func(p Part) *int { return &p.(*Amplifier).Channels }},
	{Input: calc.Input{Name: "remote", Unit: "mA", Min: 0, Max: 1000, Default: "10", Help: "What its switch-on lead rem draws."}, num: func(p Part) *float64 { return &p.(*Amplifier).Remote }},
	{Live: true, Input: calc.Input{Name: "sleeps", Unit: "mA", Min: 0, Max: 20000, Default: "0", Help: "What its supply draws switched off."}, num: func(p Part) *float64 { return &p.(*Amplifier).Sleeps }},
	{Input: calc.Input{Name: "inrush", Unit: "A", Min: 0, Max: 2000, Default: "0", Help: "Surge when it is switched on."}, num: func(p Part) *float64 { return &p.(*Amplifier).Inrush }},
	{Input: calc.Input{Name: "surge", Unit: "s", Min: 0.001, Max: 10, Default: "0.1", Help: "How long the surge lasts."}, num: func(p Part) *float64 { return &p.(*Amplifier).Surge }},
	{Input: calc.Input{Name: "least", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "Lowest voltage that it works at."}, num: func(p Part) *float64 { return &p.(*Amplifier).Least }},
	{Input: calc.Input{Name: "drop", Unit: "%", Min: 0.1, Max: 100, Help: "A limit of drop of its own, as a share or in V."}, num: func(p Part) *float64 { return &p.(*Amplifier).Drop.Share }, volts: func(p Part) *float64 { return &p.(*Amplifier).Drop.Volts }},
}

var speakerKeys = []Property{
	{Input: calc.Input{Name: "impedance", Unit: "ohm", Min: 0.5, Max: 64, Default: "4", Help: "Printed on the magnet."}, num: func(p Part) *float64 { return &p.(*Speaker).Ohms }},
	{Input: calc.Input{Name: "power", Unit: "W", Min: 0, Max: 5000, Default: "0", Help: "What it bears for long."}, num: func(p Part) *float64 { return &p.(*Speaker).Power }},
}
