package mechanical

import "baybook/calculators/calc"

// DrillSize answers which drill a metric screw needs.
var DrillSize = &calc.Calculator{
	Name:     "drill-size",
	Title:    "Drill for a metric screw",
	Question: "Which drill?",
	Doc:      "The drill for a tapped hole, and the three clearance holes, of a coarse metric thread.",
	Decides:  "tap",
	Inputs: []calc.Input{
		{Name: "thread", Label: "Thread", Kind: calc.Word, Words: threadNames(), Default: "M6",
			Help: "Coarse pitch. Measure across the threads: M6 measures just under 6 mm."},
	},
	Outputs: []calc.Output{
		{Name: "tap", Label: "To tap", Unit: "mm"},
		{Name: "close", Label: "Clear, close", Unit: "mm", Help: "where parts must line up"},
		{Name: "medium", Label: "Clear, medium", Unit: "mm", Help: "for most work"},
		{Name: "free", Label: "Clear, free", Unit: "mm", Help: "where holes were made apart from each other"},
	},
	Sources: []calc.Source{
		{Text: "Clearance holes fine, medium and coarse, ISO 273", Standing: "from memory"},
		{Text: "Coarse pitches, ISO 261", Standing: "from memory"},
		{Text: "Tap drill = diameter − pitch, machinists' rule", Standing: "common practice, no source"},
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
	out.Work("To tap: {1:4 mm} − pitch {2:4 mm} = {tap:4}", t.Diameter, t.Pitch)
	out.Work("Clearance holes of {thread} from the table of ISO 273")
	return nil
}
