package audio

import (
	"math"

	"baybook/calculators/calc"
)

// Delay answers how long the near speaker must wait for the far one.
var Delay = &calc.Calculator{
	Name:     "delay",
	Title:    "Delay for the nearer speaker",
	Question: "How much delay does the near speaker need?",
	Doc:      "The time that sound takes from the far speaker more than from the near one, as milliseconds and samples.",
	Decides:  "delay",
	Inputs: []calc.Input{
		{Name: "near", Label: "Near speaker", Unit: "m", Min: 0.1, Max: 10, Default: "0.9",
			Help: "From the cone to the listener's head, tape held straight."},
		{Name: "far", Label: "Far speaker", Unit: "m", Min: 0.1, Max: 10, Default: "1.6",
			Help: "The farthest one: it plays without delay."},
		{Name: "temperature", Label: "Air", Unit: "C", Min: -20, Max: 60, Default: "20",
			Help: "Inside the cabin in use; 10 C change it by not quite 2 %."},
		{Name: "sample_rate", Label: "Sample rate", Unit: "Hz", Min: 8000, Max: 192000, Default: "48000",
			Help: "Of the processor, off its data sheet, if it is set in samples."},
	},
	Outputs: []calc.Output{
		{Name: "delay", Label: "Delay", Unit: "ms"},
		{Name: "samples", Label: "In samples", Figures: 4, Help: "not rounded"},
		{Name: "speed", Label: "Speed of sound", Unit: "m/s", Figures: 4},
	},
	Sources: []calc.Source{
		{Text: "Speed of sound 331.3 m/s × sqrt(1 + T/273.15), kinetic theory", Standing: "from memory"},
	},
	Limits: []string{
		"Filters and amplifiers delay too, deep bass most: start from this value, then fine-tune by ear or measurement.",
		"It is right for one seat.",
	},
	Cautions: []string{
		"Set it parked. Loud test noise harms hearing: see “How loud, and for how long”.",
	},
	Run:    delay,
	Figure: drawDelay,
}

// AirSpeed is the speed of sound in m/s in dry air at a temperature in °C.
func AirSpeed(celsius float64) float64 { return 331.3 * math.Sqrt(1+celsius/273.15) }

func delay(in *calc.Values, out *calc.Result) *calc.Problem {
	near, far := in.SI("near"), in.SI("far")
	if calc.Under(far, near) {
		return calc.NewProblem("far", out.Fill("{far} is nearer than the near speaker at {near}; exchange them"))
	}
	speed := AirSpeed(in.SI("temperature"))
	seconds := math.Max(0, far-near) / speed
	out.SetSI("speed", speed)
	out.SetSI("delay", seconds)
	out.Set("samples", seconds*in.SI("sample_rate"))
	out.Work("Speed: 331.3 × sqrt(1 + {temperature} / 273.15) = {speed}")
	out.Work("Delay: ({far} − {near}) / {speed} = {delay:4}")
	out.Work("Samples: {delay:4} × {sample_rate} = {samples:5}")
	return nil
}

// drawDelay draws both ways to the ear to one scale.
func drawDelay(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 138, out.Fill("The far speaker at {far}, the near one at {near} from the ear: the near one waits {delay}."))
	const ear, most = 300.0, 270.0
	at := func(meters float64) float64 { return ear - most*meters/in.SI("far") }
	d.Line(calc.Point{X: ear, Y: 14}, calc.Point{X: ear, Y: 108}, calc.Center)
	for _, way := range []struct {
		x, y float64
		text string
	}{{at(in.SI("far")), 44, out.Fill("far {far}")}, {at(in.SI("near")), 92, out.Fill("near {near}")}} {
		d.Polygon([]calc.Point{{X: way.x - 10, Y: way.y - 4}, {X: way.x, Y: way.y - 12}, {X: way.x, Y: way.y + 12}, {X: way.x - 10, Y: way.y + 4}},
			calc.Outline, calc.Tint)
		d.Line(calc.Point{X: way.x, Y: way.y}, calc.Point{X: ear, Y: way.y}, calc.Heavy)
		if ear-way.x > 8 {
			d.Arrow(calc.Point{X: way.x, Y: way.y}, calc.Point{X: ear, Y: way.y})
		}
		d.TextWithin(calc.Point{X: (way.x + ear) / 2, Y: way.y - 16}, way.text)
	}
	d.Text(calc.Point{X: 10, Y: 128}, calc.Start, out.Fill("Near waits {delay}"))
	d.Text(calc.Point{X: ear + 8, Y: 128}, calc.End, "ear")
	return d
}
