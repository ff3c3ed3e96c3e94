package electrical

import (
	"slices"

	"baybook/calculators/calc"
)

// The inputs that wire-drop and feed-plan share.
var (
	lengthInput = calc.Input{Name: "length", Label: "Length one way", Unit: "m", Min: 0.05, Max: 60, Default: "4",
		Help: "From the feed to the load along the route of the wire, not in a straight line."}
	backInput = calc.Input{Name: "back", Label: "Return path", Kind: calc.Word, Words: []string{"wire", "body"}, Default: "wire",
		Help: "wire: a second wire of the same size and length. body: through the vehicle's metal."}
	bodyResistanceInput = calc.Input{Name: "body_resistance", Label: "Body resistance", Unit: "mohm", Min: 0, Max: 50, Default: "2",
		Help: "Of the return path through the body with its two joints. Used only where the return path is the body."}
	supplyInput = calc.Input{Name: "supply", Label: "Supply voltage", Unit: "V", Min: 6, Max: 60, Default: "12.6",
		Help: "At the start of the run, loaded. About 12.6 V at rest, 13.8 V to 14.4 V with the engine running."}
	dropLimitInput = calc.Input{Name: "limit", Label: "Allowed drop", Unit: "%", Min: 0.5, Max: 20, Default: "3",
		Help: "The share of the supply that may be lost. 3 % where it matters, 10 % at the very most."}
)

// dropSources are the sources of a run's voltage drop.
var dropSources = []calc.Source{
	{Text: "R = ρL/A with copper at 1/58 ohm·mm²/m and its temperature coefficient, IEC 60028"},
	{Text: "2 % more resistance for stranding, under IEC 60228", Standing: "from memory"},
	{Text: "3 % for circuits that matter and 10 % for others, ABYC E-11", Standing: "read as restated"},
}

// strandLimit is what the formula leaves out about flexible wire: computed
// from the largest resistances of IEC 60228 class 2 and class 5, restated.
const strandLimit = "Flexible wire that just meets IEC 60228 class 5 loses 8 to 13 % more than this, and a class 2 conductor 2 to 10 % more: leave that much room under the limit."

// WireDrop answers how much voltage a run loses.
var WireDrop = &calc.Calculator{
	Name:     "wire-drop",
	Title:    "Voltage drop in a wire run",
	Question: "Will the wire do?",
	Doc:      "The voltage that a run of wire, out and back, takes from its load, and the smallest wire that keeps the drop within its limit.",
	Decides:  "drop",
	Inputs: []calc.Input{
		{Name: "current", Label: "Current", Unit: "A", Min: 0.01, Max: 500, Default: "5",
			Help: "What the load draws. Read it off the data sheet, or measure it with a clamp meter at full load."},
		lengthInput,
		{Name: "wire", Label: "Wire size", Kind: calc.Wire, Min: 0.05, Max: 120, Default: "16 AWG",
			Help: "Printed on the insulation or the reel. SAE wire is up to a tenth thinner than the AWG number says."},
		backInput, bodyResistanceInput,
		{Name: "conductor", Label: "Conductor", Kind: calc.Word, Words: []string{"copper", "cca", "aluminium"}, Default: "copper",
			Help: "Scrape a strand: silver under the copper is copper-clad aluminum (cca)."},
		{Name: "temperature", Label: "Conductor temperature", Unit: "C", Min: -40, Max: 125, Default: "20",
			Help: "Of the conductor: in a hot roof or engine bay it is well above the air outside."},
		supplyInput, dropLimitInput,
	},
	Outputs: []calc.Output{
		{Name: "drop", Label: "Voltage drop", Unit: "V"},
		{Name: "drop_percent", Label: "Voltage drop, share", Unit: "%"},
		{Name: "at_load", Label: "Voltage at the load", Unit: "V", Figures: 4},
		{Name: "resistance", Label: "Loop resistance", Unit: "mohm"},
		{Name: "lost", Label: "Dissipation", Unit: "W"},
		{Name: "smallest_awg", Label: "Smallest AWG size", Unit: "mm2", Help: "that keeps the limit; the value is its area"},
		{Name: "smallest_metric", Label: "Smallest metric size", Unit: "mm2", Help: "that keeps the limit"},
	},
	Sources: slices.Concat(dropSources, []calc.Source{
		{Text: "AWG areas, ASTM B258", Standing: "read as restated"},
		{Text: "Copper-clad aluminum at 62.9 % IACS, ASTM B566; aluminum at 61 % IACS, ASTM B233", Standing: "from memory"},
	}),
	Limits: []string{
		strandLimit,
		"Joints, fuses and switches add their own drop; measure it.",
		"A conductor warms under load, and its resistance with it.",
		"A wire that keeps the drop may still be too thin for its fuse: “Wire and fuse for a new feed” looks at both.",
	},
	Cautions: []string{
		"A wire without a fuse at its source can burn the vehicle. Fit one that the wire can carry.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    wireDrop,
	Figure: drawWireDrop,
}

// mostDrop is the share of the supply beyond which a drop is never right:
// ABYC E-11's limit for circuits that matter least.
const mostDrop = 0.10

func wireDrop(in *calc.Values, out *calc.Result) *calc.Problem {
	material := MaterialNamed(in.Word("conductor"))
	current, supply := in.SI("current"), in.SI("supply")
	loop := func(area float64) float64 {
		return loopResistance(material, in.Num("temperature"), in.SI("length"), area, in.Word("back") == "body", in.SI("body_resistance"))
	}
	resistance := loop(in.SI("wire"))
	drop := current * resistance
	out.SetSI("resistance", resistance)
	out.SetSI("drop", drop)
	out.SetSI("drop_percent", drop/supply)
	out.SetSI("at_load", supply-drop)
	out.SetSI("lost", current*drop)
	keeps := func(area float64) bool { return !calc.Over(current*loop(area), in.SI("limit")*supply) }
	nameSmallest(out, "smallest_awg", "AWG", GaugeSizes(), keeps)
	nameSmallest(out, "smallest_metric", "metric", MetricSizes(), keeps)

	switch {
	case calc.Over(drop, mostDrop*supply):
		out.Stop("{drop_percent} of the supply is lost, more than the 10 % that any circuit may lose; use a thicker or shorter wire; " + askFeed)
	case calc.Over(drop, in.SI("limit")*supply):
		out.Check("{drop_percent} of the supply is lost, over the limit of {limit}; " + askFeed)
	}
	workWireDrop(in, out, material)
	return nil
}

// loopResistance is the resistance in ohm of a run out and back: over a second
// wire, or over the body, whose resistance is body in ohm. Length in m, area
// in m².
func loopResistance(m Material, celsius, length, area float64, overBody bool, body float64) float64 {
	one := ConductorResistance(m, celsius, length, area)
	if overBody {
		return one + body
	}
	return 2 * one
}

func workWireDrop(in *calc.Values, out *calc.Result, material Material) {
	one := ConductorResistance(material, in.Num("temperature"), in.SI("length"), in.SI("wire"))
	out.Work("Resistivity of {conductor} at {temperature}: {1:4 ohm·mm²/m}", material.At(in.Num("temperature"))*1e6)
	out.Work("One way: 1.02 × resistivity × {length} / {1:4 mm²} = {2:4 mohm}", in.Num("wire"), 1e3*one)
	if in.Word("back") == "body" {
		out.Work("Loop: one way + body {body_resistance} = {resistance:4}")
	} else {
		out.Work("Loop: 2 × one way = {resistance:4}")
	}
	out.Work("Drop: {current} × {resistance:4} = {drop:4}")
}

// askFeed leads on to the calculator that picks a wire.
const askFeed = "[Wire and fuse for a new feed](calc:feed-plan?current={current}&length={length}&back={back}&supply={supply}&limit={limit}) picks one"

// nameSmallest gives an output the smallest size that fits, or says that none does.
func nameSmallest(out *calc.Result, name, what string, sizes []Size, fits func(area float64) bool) {
	s, ok := smallest(sizes, fits)
	if !ok {
		out.Note("no smallest " + what + " size: none up to " + sizes[len(sizes)-1].Name + " keeps the limit")
		return
	}
	out.SetNamed(name, s.Area, s.Name)
}
