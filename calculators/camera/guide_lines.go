package camera

import (
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// mostMarks is how many distances guide-lines takes.
const mostMarks = 8

// GuideLines answers where marks on the floor land in the picture.
var GuideLines = &calc.Calculator{
	Name:     "guide-lines",
	Title:    "Guide lines in the picture",
	Question: "Where do the floor marks land in the picture?",
	Doc:      "The pixels at which marks on the floor, as far apart as the vehicle is wide, must show, to set or to check overlaid guide lines.",
	Decides:  "y_1",
	Inputs: inputs(
		calc.Input{Name: "pixels_wide", Label: "Picture width", Unit: "px", Min: 100, Max: 8000, Default: "720",
			Help: "Pixels across of the picture that the lines are drawn on."},
		calc.Input{Name: "pixels_high", Label: "Picture height", Unit: "px", Min: 100, Max: 8000, Default: "480",
			Help: "Pixels down of the same picture."},
		calc.Input{Name: "vehicle_width", Label: "Between the marks", Unit: "m", Min: 1, Max: 3, Default: "1.9",
			Help: "The vehicle's widest part, mirrors or body as the lines are to show, laid off half to each side of the centreline."},
		calc.Input{Name: "distances", Label: "Marks at", Kind: calc.Numbers, Unit: "m", Min: 0.1, Max: 20, Most: mostMarks, Default: "0.5,1,2,3",
			Help: "Along the floor from below the lens, up to 8 with commas; each may carry a unit."},
	),
	Outputs: markOutputs(),
	Sources: []calc.Source{
		{Text: "Turning of axes and the lens law; for a rectilinear lens the same as x = cx + f·X/D, y = cy + f·(h·cos t − Z·sin t)/D"},
		projection,
	},
	Limits: []string{
		"Camera on the centreline, looking straight back, not rolled; level floor. Pixels are counted from the top left corner, and not mirrored.",
		realLens,
	},
	Cautions: []string{
		notTheRule,
		"Lines drawn wrong are worse than none: prove them with marks on the floor and a loaded vehicle before hand-over.",
	},
	Run:    guideLines,
	Figure: drawGuideLines,
}

// markOutputs are three outputs a mark.
func markOutputs() []calc.Output {
	var all []calc.Output
	for i := range mostMarks {
		n := strconv.Itoa(i + 1)
		for _, o := range [...][2]string{{"left_x_", " left, across"}, {"right_x_", " right, across"}, {"y_", ", down"}} {
			all = append(all, calc.Output{Name: o[0] + n, Label: "Mark " + n + o[1], Unit: "px", Figures: 4})
		}
	}
	return all
}

func guideLines(in *calc.Values, out *calc.Result) *calc.Problem {
	c, problem := read(in)
	if problem != nil {
		return problem
	}
	wide, high := in.Num("pixels_wide")/2, in.Num("pixels_high")/2
	texts := strings.Split(in.Get("distances").Text, ", ")
	for i, y := range in.Get("distances").List {
		x, n := in.SI("vehicle_width")/2, strconv.Itoa(i+1)
		if !c.Sees(x, y, 0) {
			out.Note("mark " + n + " at " + texts[i] + " is not given: it is outside the picture")
			continue
		}
		u, v, _ := c.Place(x, y, 0)
		out.Set("left_x_"+n, wide*(1-u))
		out.Set("right_x_"+n, wide*(1+u))
		out.Set("y_"+n, high*(1+v))
		p := c.turn(x, y, -c.Height)
		out.Work("Mark "+n+" at "+texts[i]+": {1:4 m} aside, {2:4 m} below and {3:4 m} along the axis; {4:4} of the half width and {5:4} of the "+
			"half height from the middle: {left_x_"+n+"}, {right_x_"+n+"} across, {y_"+n+"} down", p.right, p.down, p.ahead, u, v)
	}
	if n := len(texts); n < mostMarks {
		out.Note("only {1:1} distances are given, so there are no more marks", float64(n))
	}
	if len(out.Working) == 0 {
		out.Work("No mark is in the picture")
	}
	return nil
}
