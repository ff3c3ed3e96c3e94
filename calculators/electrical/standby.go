package electrical

import "baybook/calculators/calc"

// Standby answers how long a parked vehicle may stand.
var Standby = &calc.Calculator{
	Name:     "standby",
	Title:    "How long it may stand parked",
	Question: "How long may it stand?",
	Doc:      "The days until what draws with the ignition off, and the battery's own loss, have taken it down to the lowest charge that you accept.",
	Decides:  "lasts",
	Inputs: []calc.Input{
		{Name: "battery", Label: "Battery", Unit: "Ah", Min: 1, Max: 400, Default: "60",
			Help: "Printed on its label, the 20-hour value. An aged battery holds less: take what a tester says."},
		{Name: "charge", Label: "Charge when parked", Unit: "%", Min: 1, Max: 100, Default: "100",
			Help: "From the rested voltage: 12.65 V is full, 12.24 V half (flooded lead-acid). Short trips rarely fill it."},
		{Name: "floor", Label: "Lowest charge", Unit: "%", Min: 0, Max: 99, Default: "50",
			Help: "Where it must still start. Below half, lead-acid ages fast."},
		{Name: "standing", Label: "Vehicle's own draw", Unit: "mA", Min: 0, Max: 5000, Default: "25",
			Help: "Measured with a clamp or shunt after every module has gone to sleep, before your work."},
		{Name: "added", Label: "Added draw", Unit: "mA", Min: 0, Max: 20000, Default: "0",
			Help: "What you add, parked: its standby value, or its parking mode averaged over a day."},
		{Name: "self_discharge", Label: "Own loss a month", Unit: "%", Min: 0, Max: 30, Default: "3",
			Help: "Of the battery's capacity. A few percent for a good one in the cold, several times that in the heat or with age."},
		{Name: "parked", Label: "Longest time parked", Unit: "d", Min: 0, Max: 365, Default: "14",
			Help: "Ask the owner: holidays, a closed branch, a spare vehicle."},
	},
	Outputs: []calc.Output{
		{Name: "lasts", Label: "Lasts", Unit: "d"},
		{Name: "usable", Label: "Charge to use", Unit: "Ah"},
		{Name: "draw", Label: "Draw in all", Unit: "mA", Help: "own loss of the battery included"},
	},
	Sources: []calc.Source{
		{Text: "Charge balance: time = capacity × (charge − floor) / current"},
		{Text: "A month as 730.5 h, a twelfth of a year of 365.25 days"},
		{Text: "Rested voltage against charge, Battery Council International"},
		{Text: "Check under one and a half times the time parked", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Cold takes capacity away, and a cold engine asks for more: keep more in hand in winter.",
		"A draw that comes in bursts (a camera waking on movement) must be averaged over a day.",
		"At such small currents the battery gives its full capacity; it does not at large ones.",
	},
	Cautions: []string{
		"A flat battery freezes, and a frozen one can burst when charged.",
		"A device that guards the battery by voltage needs its threshold set for the battery that is fitted.",
		"Follow the vehicle maker's service information for battery work; memory and safety systems may need the supply held up.",
	},
	Run:    standby,
	Figure: drawStandby,
}

// month is the time over which a battery's own loss is given, in s: 730.5 h.
const month = 730.5 * 3600

func standby(in *calc.Values, out *calc.Result) *calc.Problem {
	charge, floor := in.SI("charge"), in.SI("floor")
	if !calc.Over(charge, floor) {
		return calc.NewProblem("charge", out.Fill("{charge} is not above the floor of {floor}; give a higher charge or a lower floor"))
	}
	usable := in.SI("battery") * (charge - floor) // A·s
	loss := in.SI("battery") * in.SI("self_discharge") / month
	draw := in.SI("standing") + in.SI("added") + loss
	out.SetSI("usable", usable)
	out.SetSI("draw", draw)
	out.Work("To use: {battery} × ({charge} − {floor}) = {usable:4}")
	out.Work("Own loss: {battery} × {self_discharge} / 730.5 h = {1:4 mA}", 1e3*loss)
	out.Work("Draw: {standing} + {added} + {1:4 mA} = {2:4 mA}", 1e3*loss, 1e3*draw)
	if draw == 0 {
		out.Note("there is no time to give: nothing draws on the battery")
		return nil
	}
	lasts := usable / draw // s
	out.SetSI("lasts", lasts)
	out.Work("Lasts: {usable:4} / {1:4 mA} / 24 h = {lasts}", 1e3*draw)
	switch {
	case calc.Under(lasts, in.SI("parked")):
		out.Stop("it lasts {lasts}, less than the {parked} that it stands; cut the draw, fit a cut-off or a charger")
	case calc.Under(lasts, 1.5*in.SI("parked")):
		out.Check("it lasts {lasts}, less than one and a half times the {parked} that it stands; cold or age will take the rest")
	}
	return nil
}
