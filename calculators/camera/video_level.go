package camera

import (
	"math"

	"baybook/calculators/calc"
)

// VideoLevel answers what the wrong number of terminations does to a picture.
var VideoLevel = &calc.Calculator{
	Name:     "video-level",
	Title:    "Video level by termination",
	Question: "Is the video line terminated once?",
	Doc:      "The level of a composite picture by how many inputs with 75 Ω hang on its line: one is right, none makes it glare, two make it dark.",
	Decides:  "level",
	Inputs: []calc.Input{
		{Name: "loads", Label: "Inputs of 75 Ω", Kind: calc.Count, Min: 0, Max: 4, Default: "1",
			Help: "Each display terminates its line once. A display that loops through may have a switch for it."},
	},
	Outputs: []calc.Output{
		{Name: "level", Label: "Level, peak to peak", Unit: "V"},
		{Name: "change", Label: "Level against 1 V", Unit: "dB", Places: 2},
	},
	Sources: []calc.Source{
		{Text: "A source of 2 V behind 75 Ω, so that one load of 75 Ω has 1 V peak to peak", Standing: "read as restated"},
		{Text: "Voltage divider, Ohm's law"},
	},
	Limits: []string{
		"Composite video alone; digital and analog HD links have other levels, and show no picture at all where they are loaded twice.",
		"A long cable and bad connectors take more, and reflect.",
	},
	Cautions: []string{
		"A picture that is too dark or too bright hides what stands behind: prove it in sun and at night.",
		"Two displays on one camera want a splitter with its own outputs, not a Y-cable.",
	},
	Run: videoLevel,
}

// terminated is the impedance in ohm of a video source, its line and its load.
const terminated = 75.0

func videoLevel(in *calc.Values, out *calc.Result) *calc.Problem {
	const open = 2.0 // V
	loads := in.Int("loads")
	level := open
	if loads > 0 {
		load := terminated / float64(loads)
		level = open * load / (terminated + load)
		out.Work("Loads together: 75 Ω / {loads} = {1:4 ohm}", load)
		out.Work("Level: 2 V × {1:4 ohm} / (75 Ω + {1:4 ohm}) = {2:4 V}", load, level)
	} else {
		out.Work("No load: the whole 2 V of the source")
	}
	out.SetSI("level", level)
	out.Set("change", 20*math.Log10(level))
	out.Work("Level against 1 V: 20 × log10({1:4}) = {change}", level)
	switch {
	case loads == 0:
		out.Check("nothing terminates the line: the level is twice what it should be, the picture glares or tears; switch on 75 Ω at the last display")
	case loads > 1:
		out.Check("{loads} inputs load the line: the picture is dark and may roll; switch the termination off at all but the last, or use a splitter")
	}
	return nil
}
