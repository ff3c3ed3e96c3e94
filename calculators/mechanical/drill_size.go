package mechanical

import "baybook/calculators/calc"

// DrillSize answers which drill a screw needs.
var DrillSize = &calc.Calculator{
	Name:     "drill-size",
	Title:    "Drill for a screw",
	Question: "Which drill?",
	Doc:      "The drill for a tapped hole, and the three clearance holes, of a metric coarse, UNC or UNF thread.",
	Decides:  "tap",
	Inputs: []calc.Input{
		{Name: "thread", Label: "Thread", Kind: calc.Word, Words: threadNames(), Default: "M6",
			Help: "Metric coarse, or UNC and UNF: 1/4-20 is a quarter inch with 20 threads an inch. Measure across the threads: M6 measures just under 6 mm."},
	},
	Outputs: []calc.Output{
		{Name: "tap", Label: "Tap drill", Unit: "mm"},
		{Name: "close", Label: "Clearance hole, close", Unit: "mm", Help: "where parts must line up"},
		{Name: "medium", Label: "Clearance hole, medium", Unit: "mm", Help: "for most work"},
		{Name: "free", Label: "Clearance hole, free", Unit: "mm", Help: "where holes were made apart from each other"},
	},
	Sources: []calc.Source{
		{Text: "Clearance holes fine, medium and coarse, ISO 273", Standing: "read as restated"},
		{Text: "Coarse pitches, ISO 261", Standing: "from memory"},
		{Text: "Inch clearance holes close, normal and loose, ASME B18.2.8 in Machinery's Handbook 31 for 8, 10 and 1/4 in"},
		{Text: "The same for 5/16 in and more; UNC and UNF sizes, ASME B1.1", Standing: "from memory"},
		{Text: "Inch tap drills for about 75 % of the thread, tap chart", Standing: "read as restated"},
		{Text: "Metric tap drill = diameter − pitch, machinists' rule", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Take the next drill size that there is: 6.8 mm for M8, 10.2 mm for M12.",
		"Sheet thinner than three pitches holds no thread: use a nut or a rivet nut.",
		"A rivet nut needs its own hole, which its maker gives.",
	},
	Cautions: []string{
		"Look behind the panel before any drill: harness, fuel and brake lines, restraint parts. Set a depth stop.",
	},
	Run: drillSize,
}

func drillSize(in *calc.Values, out *calc.Result) *calc.Problem {
	t := ThreadNamed(in.Word("thread"))
	out.Set("tap", t.TapDrill())
	out.Set("close", t.Fine)
	out.Set("medium", t.Medium)
	out.Set("free", t.Coarse)
	if t.Inch() {
		out.Note("{thread}: tap drill "+t.TapName+" ("+calc.Format(t.Tap/inch, 4)+" in); clearance holes {1:3}, {2:3} and {3:3} in", t.Fine/inch, t.Medium/inch, t.Coarse/inch)
		out.Work("Tap drill of {thread} from the tap chart, clearance holes from the table of ASME B18.2.8")
		return nil
	}
	out.Work("To tap: {1:4 mm} − pitch {2:4 mm} = {tap:4}", t.Diameter, t.Pitch)
	out.Work("Clearance holes of {thread} from the table of ISO 273")
	return nil
}
