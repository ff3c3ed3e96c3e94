package electrical

import (
	"math"

	"baybook/calculators/calc"
)

// SupplyBudget answers whether the alternator carries the vehicle and its
// amplifiers.
var SupplyBudget = &calc.Calculator{
	Name:     "supply-budget",
	Title:    "Will the alternator carry it?",
	Question: "Will the alternator carry it?",
	Doc:      "What amplifiers draw at full power and on music, and what the alternator has left at idle and on the road.",
	Decides:  "idle_spare",
	Inputs: []calc.Input{
		{Name: "alternator", Label: "Alternator", Unit: "A", Min: 20, Max: 400, Default: "120",
			Help: "On its plate or in the service information, its hot rating at speed."},
		{Name: "idle_share", Label: "Share at idle", Unit: "%", Min: 10, Max: 100, Default: "50",
			Help: "What is left of it at warm idle. No source gives one figure: measure with a clamp and everything on."},
		{Name: "base", Label: "Vehicle's own load", Unit: "A", Min: 0, Max: 200, Default: "35",
			Help: "Lamps, blower, wipers, screen heating, engine: clamp on the battery feed, engine running, all on."},
		{Name: "amp_power", Label: "Amplifiers, rms", Unit: "W", Min: 0, Max: 10000, Default: "400",
			Help: "All channels of all amplifiers together, rms at the load that is fitted."},
		{Name: "amp_class", Label: "Class", Kind: calc.Word, Words: []string{"ab", "d"}, Default: "d",
			Help: "On the data sheet; full-range amplifiers with large fins are often ab."},
		{Name: "efficiency", Label: "Efficiency", Unit: "%", Min: 20, Max: 95, Default: "80",
			Help: "At full power: 80 % to 90 % for class d, 55 % to 65 % for class ab (common practice)."},
		{Name: "power_share", Label: "Music, share of power", Unit: "%", Min: 1, Max: 100, Default: "12.5",
			Help: "Average over rated power. One eighth is the usual test level; loud bass music comes near one third."},
		{Name: "other", Label: "Other added load", Unit: "A", Min: 0, Max: 200, Default: "0",
			Help: "Screens, chargers, lighting, an inverter."},
		{Name: "voltage", Label: "Voltage", Unit: "V", Min: 11, Max: 15, Default: "13.8",
			Help: "At the amplifier with the engine running."},
	},
	Outputs: []calc.Output{
		{Name: "average", Label: "Amplifiers on music", Unit: "A"},
		{Name: "full_power", Label: "Amplifiers, full power", Unit: "A"},
		{Name: "idle_spare", Label: "Left at idle", Unit: "A"},
		{Name: "cruise_spare", Label: "Left on the road", Unit: "A"},
	},
	Sources: []calc.Source{
		{Text: "I = P/(efficiency × U), energy balance"},
		{Text: "Class B draws in proportion to its output voltage, so to the square root of the power share, electronics textbooks", Standing: "from memory"},
		{Text: "One eighth of rated power for music, EN/IEC 60065 4.2.6", Standing: "from memory"},
		{Text: "Half of the rating at idle", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Bass comes in bursts: the cable and the fuse see the full-power current for moments.",
		"A smart alternator lowers its voltage on purpose; a hot one gives less than its plate says.",
		"What the alternator lacks the battery gives, until it is flat.",
	},
	Cautions: []string{
		"Size cable and fuse by the full-power current, not by the average: a thin cable burns. See “Wire and fuse for a new feed”.",
		"Loud music harms hearing: see “How loud, and for how long”.",
		"Follow the vehicle maker's service information for alternator and battery work.",
	},
	Run:    supplyBudget,
	Figure: drawSupplyBudget,
}

// FullPowerCurrent is what an amplifier draws in A for its rms power in W at
// a supply in V; efficiency in parts of one.
func FullPowerCurrent(power, efficiency, supply float64) float64 {
	return power / (efficiency * supply)
}

// AverageShare is the share of the full-power current that an amplifier
// draws at a share of its power: the share itself for class d, whose
// efficiency stays, and its square root for class ab, whose output stage
// draws in proportion to output voltage (class-B law, sine).
func AverageShare(class string, powerShare float64) float64 {
	if class == "ab" {
		return math.Sqrt(powerShare)
	}
	return powerShare
}

func supplyBudget(in *calc.Values, out *calc.Result) *calc.Problem {
	full := FullPowerCurrent(in.SI("amp_power"), in.SI("efficiency"), in.SI("voltage"))
	share := AverageShare(in.Word("amp_class"), in.SI("power_share"))
	average := full * share
	alternator, load := in.SI("alternator"), in.SI("base")+in.SI("other")+average
	idle := alternator * in.SI("idle_share")
	out.SetSI("full_power", full)
	out.SetSI("average", average)
	out.SetSI("idle_spare", idle-load)
	out.SetSI("cruise_spare", alternator-load)
	if calc.Over(load, alternator) {
		out.Stop("on the road {1:4 A} is drawn of {2:4 A}: the battery goes flat while driving; less load or a larger alternator", load, alternator)
	}
	if calc.Over(load, idle) {
		out.Check("at idle {1:4 A} is drawn of about {2:4 A}: the battery gives the rest, so the system must be turned down when parked", load, idle)
	}
	out.Work("Full power: {amp_power} / ({efficiency} × {voltage}) = {1:4 A}", full)
	if in.Word("amp_class") == "ab" {
		out.Work("On music, class ab: {1:4 A} × sqrt({power_share}) = {2:4 A}", full, average)
	} else {
		out.Work("On music, class d: {1:4 A} × {power_share} = {2:4 A}", full, average)
	}
	out.Work("Drawn: {base} + {other} + {1:4 A} = {2:4 A}", average, load)
	out.Work("At idle: {alternator} × {idle_share} − {1:4 A} = {2:4 A}", load, idle-load)
	out.Work("On the road: {alternator} − {1:4 A} = {2:4 A}", load, alternator-load)
	return nil
}
