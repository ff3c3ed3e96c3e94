package electrical

import (
	"slices"

	"baybook/calculators/calc"
)

// SecondBattery answers what a DC-DC charger between two batteries draws, how
// long it charges, and which fuses its two cables need.
var SecondBattery = &calc.Calculator{
	Name:     "second-battery",
	Title:    "Charger for a second battery",
	Question: "What does the second battery's charger draw, and how long does it take?",
	Doc:      "The current that a DC-DC charger takes from the starter battery, the time to charge the second battery, and a fuse for each end.",
	Decides:  "input",
	Inputs: []calc.Input{
		{Name: "output", Label: "Charger output", Unit: "A", Min: 1, Max: 200, Default: "25",
			Help: "On the charger's plate or data sheet."},
		{Name: "out_volts", Label: "Charging voltage", Unit: "V", Min: 10, Max: 60, Default: "14.4",
			Help: "What the charger holds the second battery at while it charges in full."},
		{Name: "in_volts", Label: "Voltage at its input", Unit: "V", Min: 9, Max: 60, Default: "13.2",
			Help: "At the charger's own terminals with the engine running. A smart alternator may hold it near 12.5 V."},
		{Name: "efficiency", Label: "Efficiency", Unit: "%", Min: 50, Max: 100, Default: "90",
			Help: "On the data sheet; 85 % to 95 % is usual (common practice)."},
		{Name: "battery", Label: "Second battery", Unit: "Ah", Min: 1, Max: 1000, Default: "100", Help: "Its capacity, on its label."},
		{Name: "from", Label: "Charge before", Unit: "%", Min: 0, Max: 99, Default: "50", Help: "What is left in it when charging starts."},
		{Name: "to", Label: "Charge after", Unit: "%", Min: 1, Max: 100, Default: "100", Help: "Where charging may end."},
	},
	Outputs: []calc.Output{
		{Name: "input", Label: "Current taken in", Unit: "A"},
		{Name: "hours", Label: "Charging time", Unit: "h", Help: "at the full output; a lead battery takes longer at the end"},
		{Name: "fuse_in", Label: "Fuse, starter battery end", Unit: "A"},
		{Name: "fuse_out", Label: "Fuse, second battery end", Unit: "A"},
	},
	Sources: slices.Concat([]calc.Source{
		{Text: "Power in = power out / efficiency; time = charge / current"},
	}, fuseSources[:1]),
	Limits: []string{
		"A lead battery takes less and less current above about 80 %: the last fifth can take as long as all before it.",
		"The fuses are for air of up to 40 °C; in hotter places ask “Fuse for a load and its wire”.",
		"The alternator must have this current to spare: ask “Will the alternator carry it?”.",
	},
	Cautions: []string{
		"Both batteries feed the cable between them: fit a fuse at each end, close to the battery.",
		"A lithium battery needs a charger made for it, and must not be charged below freezing.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    secondBattery,
	Figure: drawSecondBattery,
}

func secondBattery(in *calc.Values, out *calc.Result) *calc.Problem {
	from, to := in.SI("from"), in.SI("to")
	if !calc.Under(from, to) {
		return calc.NewProblem("from", out.Fill("{from} is not below the {to} to reach; give a lower start or a higher end"))
	}
	output := in.SI("output")
	input := output * in.SI("out_volts") / (in.SI("efficiency") * in.SI("in_volts"))
	out.SetSI("input", input)
	out.SetSI("hours", in.SI("battery")*(to-from)/output)
	out.Work("Taken in: {output} × {out_volts} / ({efficiency} × {in_volts}) = {input:4}")
	out.Work("Time: {battery} × ({to} − {from}) / {output} = {hours:4}")
	for _, end := range []struct {
		name, what string
		amps       float64
	}{{"fuse_in", "starter battery's", input}, {"fuse_out", "second battery's", output}} {
		fuse, ok := FuseFor(end.amps)
		if !ok {
			out.Stop("no fuse is named for the "+end.what+" end: none of the standard ratings, up to 300 A, carries {1:3 A}; take two chargers", end.amps)
			continue
		}
		out.SetSI(end.name, fuse)
		out.Work("Fuse at the "+end.what+" end: {1:4 A} / 0.8 = {2:4 A}, next standard rating {"+end.name+":4}", end.amps, end.amps/FuseLoading)
	}
	out.Note("a lead battery takes longer than {hours}, for it takes less and less current toward the end")
	return nil
}

// drawSecondBattery draws the starter battery, the charger and the second
// battery in line, with the fuse of each end.
func drawSecondBattery(in *calc.Values, out *calc.Result) *calc.Drawing {
	fuse := func(name string) string {
		if out.Get(name).Present {
			return "{" + name + ":4}"
		}
		return "none"
	}
	d := calc.NewDrawing(320, 170, out.Fill("Starter battery, fuse "+fuse("fuse_in")+", {input} into the charger, {output} out of it, fuse "+
		fuse("fuse_out")+", second battery of {battery}: {hours} from {from} to {to}."))
	box := func(x float64, f calc.Fill, lines ...string) {
		d.Rect(calc.Point{X: x, Y: 46}, 62, 54, calc.Outline, f)
		for i, l := range lines {
			d.Text(calc.Point{X: x + 31, Y: 70 + 17*float64(i)}, calc.Middle, out.Fill(l))
		}
	}
	box(6, calc.Empty, "Starter", "battery")
	box(129, calc.Paper, "DC-DC", "{efficiency}")
	box(252, calc.Tint, "Second", "{battery}")
	for _, end := range []struct {
		from, to    float64
		fuse, flows string
	}{{68, 129, fuse("fuse_in"), "{input}"}, {191, 252, fuse("fuse_out"), "{output}"}} {
		middle := (end.from + end.to) / 2
		d.Line(calc.Point{X: end.from, Y: 73}, calc.Point{X: end.to, Y: 73}, calc.Heavy)
		d.Rect(calc.Point{X: middle - 14, Y: 64}, 28, 18, calc.Outline, calc.Paper)
		d.Line(calc.Point{X: middle - 14, Y: 73}, calc.Point{X: middle + 14, Y: 73}, calc.Thin)
		d.Text(calc.Point{X: middle, Y: 36}, calc.Middle, out.Fill(end.flows))
		d.Text(calc.Point{X: middle, Y: 116}, calc.Middle, "fuse")
		d.Text(calc.Point{X: middle, Y: 132}, calc.Middle, out.Fill(end.fuse))
	}
	d.Text(calc.Point{X: 160, Y: 16}, calc.Middle, "Current, engine running")
	d.TextWithin(calc.Point{X: 160, Y: 160}, out.Fill("{from} to {to} in {hours} at least"))
	return d
}
