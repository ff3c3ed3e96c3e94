package circuit

import "baybook/calculators/calc"

// The keys of what joins.

var groundKeys = []Property{
	{Required: true, Form: PointName, Input: calc.Input{Name: "point", Help: "The point of the body that it is bolted to."}, text: func(p Part) *string { return &p.(*Ground).Point }},
	{Input: calc.Input{Name: "joint", Unit: "mohm", Min: 0, Max: 1000, Default: "0.5", Help: "Resistance of the bolted joint."}, num: func(p Part) *float64 { return &p.(*Ground).Ohms }},
}

var wireKeys = []Property{
	{Form: Terminal, Required: true, Input: calc.Input{Name: "from", Help: "The end that it starts at."}, text: func(p Part) *string { return &p.(*Wire).From }},
	{Form: Terminal, Required: true, Input: calc.Input{Name: "to", Help: "The end that it goes to."}, text: func(p Part) *string { return &p.(*Wire).To }},
	{Required: true, Live: true, Input: calc.Input{Name: "size", Kind: calc.Wire, Min: 0.05, Max: 240, Help: "AWG or mm2, printed on the insulation."},
		num: func(p Part) *float64 { return &p.(*Wire).Area }, text: func(p Part) *string { return &p.(*Wire).Size }},
	{Required: true, Live: true, Input: calc.Input{Name: "length", Unit: "m", Min: 0.005, Max: 100, Help: "Along the way that it takes."},
		num: func(p Part) *float64 { return &p.(*Wire).Length }, text: func(p Part) *string { return &p.(*Wire).Run }},
	{Required: true, Form: Color, Input: calc.Input{Name: "colour", Help: "Letters of IEC 60757, two colours run together: RD, RDBU."}, text: func(p Part) *string { return &p.(*Wire).Color }},
	{Input: calc.Input{Name: "conductor", Kind: calc.Word, Words: []string{"copper", "cca", "aluminium"}, Default: "copper", Help: "What the strands are made of."}, text: func(p Part) *string { return &p.(*Wire).Conductor }},
	{Form: Insulation, Input: calc.Input{Name: "insulation", Unit: "C", Min: 60, Max: 250, Default: "105", Help: "Temperature rating, or a class letter A to H of ISO 6722-1."},
		num: func(p Part) *float64 { return &p.(*Wire).Insulation }},
	{Input: calc.Input{Name: "ambient", Unit: "C", Min: -40, Max: 150, Help: "Hottest air around this wire, where it is not that of the limits."}, num: func(p Part) *float64 { return &p.(*Wire).Ambient }},
	{Input: calc.Input{Name: "temperature", Unit: "C", Min: -40, Max: 200, Help: "Of its conductor when drops are computed, where it is not that of the limits."}, num: func(p Part) *float64 { return &p.(*Wire).Temperature }},
	{Input: calc.Input{Name: "bundled", Kind: calc.Count, Min: 1, Max: 30, Default: "1", Help: "Current-carrying wires in the same loom."}, whole: func(p Part) *int { return &p.(*Wire).Bundled }},
	{Form: Flag, Input: calc.Input{Name: "sheathed", Kind: calc.Word, Words: []string{"yes", "no"}, Help: "yes: in a sleeve or conduit of its own from the source on."}, yes: func(p Part) *bool { return &p.(*Wire).Sheathed }},
	{Form: FreeText, Input: calc.Input{Name: "function", Help: "What it is for; one colour has one function in a drawing."}, text: func(p Part) *string { return &p.(*Wire).Function }},
}

var bodyKeys = []Property{
	{Required: true, Form: PointName, Input: calc.Input{Name: "from", Help: "A point of the body."}, text: func(p Part) *string { return &p.(*Body).From }},
	{Required: true, Form: PointName, Input: calc.Input{Name: "to", Help: "Another point of the body."}, text: func(p Part) *string { return &p.(*Body).To }},
	{Input: calc.Input{Name: "ohms", Unit: "mohm", Min: 0, Max: 10000, Default: "2", Help: "Resistance of the metal between them."}, num: func(p Part) *float64 { return &p.(*Body).Ohms }},
}

var linkKeys = []Property{
	{Required: true, Form: PartName, Input: calc.Input{Name: "from", Help: "The part that the cable starts at."}, text: func(p Part) *string { return &p.(*Link).From }},
	{Required: true, Form: PartName, Input: calc.Input{Name: "to", Help: "The part that it goes to."}, text: func(p Part) *string { return &p.(*Link).To }},
	{Input: calc.Input{Name: "carries", Kind: calc.Word, Words: []string{"camera", "video", "data", "audio", "signal"}, Default: "signal", Help: "What runs in it."}, text: func(p Part) *string { return &p.(*Link).Carries }},
}
