package electrical

import (
	"math"

	"baybook/calculators/calc"
)

// BatteryRun answers how long a load runs with the engine off.
var BatteryRun = &calc.Calculator{
	Name:     "battery-run",
	Title:    "Engine-off run time",
	Question: "How long does it run with the engine off?",
	Doc:      "The hours that a battery runs a load before it is down to the charge that must be left in it. A large load takes less out of a battery than a small one.",
	Decides:  "hours",
	Inputs: []calc.Input{
		{Name: "capacity", Label: "Battery capacity", Unit: "Ah", Min: 1, Max: 1000, Default: "80",
			Help: "On its label, at the 20-hour rate. An aged battery holds less: take what a tester says."},
		{Name: "kind", Label: "Battery kind", Kind: calc.Word, Words: []string{"lead", "lithium"}, Default: "lead",
			Help: "lead: flooded, EFB, AGM or gel. lithium: lithium iron phosphate with its own management."},
		{Name: "load", Label: "Load", Unit: "A", Min: 0.01, Max: 500, Default: "10",
			Help: "The lasting current of everything that runs, measured with a clamp meter."},
		{Name: "start", Label: "Charge at the start", Unit: "%", Min: 1, Max: 100, Default: "100",
			Help: "After short trips a battery is rarely full: 80 % is a fair guess."},
		{Name: "stop", Label: "Charge to leave", Unit: "%", Min: 0, Max: 99, Default: "50",
			Help: "What must be left in it. Lead ages fast below half; the starter battery must still crank."},
		{Name: "exponent", Label: "Peukert's exponent", Min: 1, Max: 1.6, Default: "",
			Help: "From the maker's sheet. Left empty it is 1.15 for lead and 1.05 for lithium (common practice)."},
	},
	Outputs: []calc.Output{
		{Name: "hours", Label: "Run time", Unit: "h"},
		{Name: "used", Label: "Charge taken out", Unit: "Ah"},
	},
	Sources: []calc.Source{
		{Text: "Peukert's law at the 20-hour rate: hours = 20 × (capacity / (20 × load))^k, taken as k = 1 where the load is smaller", Standing: "from memory"},
		{Text: "Exponents 1.15 for lead and 1.05 for lithium", Standing: "common practice, no source"},
		{Text: "Check where lead is taken below half", Standing: "common practice, no source"},
	},
	Limits: []string{
		"At 25 °C. Cold takes capacity away, and so does age: an old battery may hold half of its label (from memory).",
		"A load that comes and goes is averaged here; an inverter draws more as the battery sags.",
	},
	Cautions: []string{
		"A battery in a closed space gives off gas or heat: keep its vents free and no flame near it.",
		"Do not run the load from a starter battery unless something cuts it off in time to crank.",
		"Follow the vehicle maker's service information for battery work.",
	},
	Run:    batteryRun,
	Figure: drawBatteryRun,
}

// ratedHours is the discharge time in h that a capacity is given for.
const ratedHours = 20.0

// exponents are Peukert's exponents by the kind of battery, common practice.
var exponents = []struct {
	kind string
	k    float64
}{{"lead", 1.15}, {"lithium", 1.05}}

// peukert is the exponent as given, or that of the kind of battery.
func peukert(in *calc.Values) float64 {
	if in.Given("exponent") {
		return in.Num("exponent")
	}
	for _, e := range exponents {
		if e.kind == in.Word("kind") {
			return e.k
		}
	}
	return exponents[0].k
}

// RunHours is how long in h a battery, its capacity in Ah given at the 20-hour
// rate, runs a load in A from full to empty: 20·(C/(20·I))^k, with k = 1 for a
// load of at most C/20, since no more comes out than is in it.
func RunHours(capacity, load, k float64) float64 {
	if !calc.Over(load, capacity/ratedHours) {
		k = 1
	}
	return ratedHours * math.Pow(capacity/(ratedHours*load), k)
}

func batteryRun(in *calc.Values, out *calc.Result) *calc.Problem {
	start, stop := in.SI("start"), in.SI("stop")
	if !calc.Over(start, stop) {
		return calc.NewProblem("start", out.Fill("{start} is not above the {stop} to leave; give a higher start or a lower rest"))
	}
	capacity, load, k := in.Num("capacity"), in.Num("load"), peukert(in)
	whole := RunHours(capacity, load, k)
	hours := whole * (start - stop)
	out.Set("hours", hours)
	out.Set("used", load*hours)
	if calc.Over(load, capacity/ratedHours) {
		out.Work("From full to empty: 20 h × ({capacity} / (20 h × {load}))^{1:3} = {2:4 h}", k, whole)
	} else {
		out.Work("From full to empty: {capacity} / {load} = {1:4 h}; at or under the 20-hour current it gives all of its capacity", whole)
	}
	out.Work("From {start} to {stop}: {1:4 h} × {2:3} = {hours:4}", whole, start-stop)
	out.Work("Taken out: {load} × {hours:4} = {used:4}")
	if in.Word("kind") == "lead" && calc.Under(stop, 0.5) {
		out.Check("a lead battery taken below half ages fast; leave 50 % in it or fit a larger one")
	}
	return nil
}

// drawBatteryRun draws the charge left over the hours, with what must stay.
func drawBatteryRun(in *calc.Values, out *calc.Result) *calc.Drawing {
	start, stop, hours := in.Num("start"), in.Num("stop"), out.Num("hours")
	d := calc.NewDrawing(320, 246, out.Fill("Charge of a {capacity} battery under {load}, from {start} down to {stop} after {hours}."))
	p := calc.NewPlot(d, calc.Point{X: 40, Y: 40}, 264, 166, 0, hours*1.25, 0, 100, false, "Hours", "Charge, %")
	p.Across(stop, calc.Hidden)
	p.Curve(func(t float64) float64 { return start - (start-stop)*t/hours }, calc.Heavy)
	p.Mark(hours, stop, "")
	d.Text(calc.Point{X: 304, Y: 18}, calc.End, out.Fill("Ring: after {hours}, {used} taken out"))
	d.Text(calc.Point{X: 304, Y: 33}, calc.End, out.Fill("Dashed: {stop} to leave"))
	return d
}
