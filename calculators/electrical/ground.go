package electrical

import "baybook/calculators/calc"

// GroundTest turns a voltage-drop reading into a resistance and judges it at
// full load.
var GroundTest = &calc.Calculator{
	Name:     "ground-test",
	Title:    "What a voltage-drop reading means",
	Question: "Is this ground good enough?",
	Doc:      "The resistance behind a drop read under a small load, what it would drop at full load, and the heat that makes there.",
	Decides:  "at_full_load",
	Inputs: []calc.Input{
		{Name: "drop", Label: "Drop read", Unit: "mV", Min: 0, Max: 5000, Default: "20",
			Help: "Meter on millivolts: one probe on the negative post of the battery itself, one on the ground terminal of the device, load switched on."},
		{Name: "current", Label: "Current flowing", Unit: "A", Min: 0.05, Max: 300, Default: "5",
			Help: "While the drop was read, with a clamp meter on the same wire."},
		{Name: "full_load", Label: "Full load", Unit: "A", Min: 0.05, Max: 500, Default: "20",
			Help: "The most that the device will ever draw, off its data sheet or its fuse."},
		{Name: "limit", Label: "Limit at full load", Unit: "mV", Min: 1, Max: 1000, Default: "100",
			Help: "100 mV for a ground, 200 mV for a feed, 300 mV over a switch (common practice)."},
	},
	Outputs: []calc.Output{
		{Name: "at_full_load", Label: "Drop at full load", Unit: "mV"},
		{Name: "resistance", Label: "Resistance", Unit: "mohm"},
		{Name: "heat", Label: "Heat at full load", Unit: "W"},
	},
	Sources: []calc.Source{
		{Text: "R = U/I and P = I²R, Ohm's law"},
		{Text: "Limits of 100 mV for a ground and 200 mV for a feed, trade training text", Standing: "from memory"},
		{Text: "Check from half the limit on", Standing: "common practice, no source"},
	},
	Limits: []string{
		"A reading under a small load is coarse: 1 mV of meter error at 1 A is 1 mohm. Read it with as much current as you safely can.",
		"A joint can be good cold and bad when warm or shaken; read it again after the drive.",
	},
	Cautions: []string{
		"A warm joint is a fire to come: a few watts in one terminal char it.",
		"Never ground to a bracket, hinge, fuel or brake line, or to a bolt of belts, airbags or seats.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    groundTest,
	Figure: drawGroundTest,
}

func groundTest(in *calc.Values, out *calc.Result) *calc.Problem {
	resistance := in.SI("drop") / in.SI("current")
	full, limit := in.SI("full_load"), in.SI("limit")
	drop := resistance * full
	out.SetSI("resistance", resistance)
	out.SetSI("at_full_load", drop)
	out.SetSI("heat", full*drop)
	switch {
	case calc.Over(drop, limit):
		out.Stop("{at_full_load} would be lost at full load, over the limit of {limit}; clean the joint to bare metal, move it or " +
			"use a thicker wire, then read again")
	case calc.Over(drop, limit/2):
		out.Check("{at_full_load} would be lost at full load, over half the limit of {limit}; it will not stay good for long")
	}
	out.Work("Resistance: {drop} / {current} = {resistance:4}")
	out.Work("At full load: {resistance:4} × {full_load} = {at_full_load:4}")
	out.Work("Heat: {full_load} × {at_full_load:4} = {heat:4}")
	return nil
}
