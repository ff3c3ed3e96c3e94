package camera

import (
	"math"

	"baybook/calculators/calc"
)

// SensorRow answers where parking sensors go in a bumper and what they miss.
var SensorRow = &calc.Calculator{
	Name:     "sensor-row",
	Title:    "Parking sensors in a bumper",
	Question: "Where do the parking sensors go?",
	Doc:      "Even places for parking sensors in a bumper, how far out their beams meet, and where the lower edge of the beam meets the ground.",
	Decides:  "positions",
	Inputs: []calc.Input{
		{Name: "width", Label: "Usable bumper", Unit: "mm", Min: 300, Max: 3000, Default: "1500",
			Help: "The straight part that has room behind it, without corners, hitch and reinforcement."},
		{Name: "count", Label: "Sensors", Kind: calc.Count, Min: 2, Max: 6, Default: "4", Help: "How many stand in the row."},
		{Name: "beam", Label: "Beam across", Unit: "deg", Min: 10, Max: 150, Default: "70", Help: "The whole angle from side to side, off the data sheet."},
		{Name: "beam_up", Label: "Beam up and down", Unit: "deg", Min: 5, Max: 120, Default: "40", Help: "The whole angle from top to bottom, off the data sheet."},
		{Name: "height", Label: "Height of the sensors", Unit: "mm", Min: 150, Max: 1000, Default: "500", Help: "From the ground to the middle of the sensor, the vehicle loaded as it is used."},
		{Name: "tilt", Label: "Tilt up", Unit: "deg", Min: -15, Max: 15, Default: "0", Help: "How far the sensor looks up; less than 0 looks down. Many bumper faces lean."},
	},
	Outputs: []calc.Output{
		{Name: "positions", Label: "Places", Text: true, Help: "from one end of the usable bumper"},
		{Name: "spacing", Label: "Spacing", Unit: "mm"},
		{Name: "blind", Label: "Beams meet after", Unit: "mm", Help: "nearer than this a post between two sensors may be missed"},
		{Name: "ground", Label: "Beam meets the ground at", Unit: "mm", Help: "nearer ground makes false alarms"},
	},
	Sources: []calc.Source{
		{Text: "Geometry of a cone from each sensor: tan of half the beam"},
		{Text: "Check over 300 mm between beams and under 1000 mm to the ground", Standing: "common practice, no source"},
	},
	Limits: []string{
		"A thin post, a soft or a slanting thing returns little sound: it may be missed inside the beam as well.",
		"A bumper is curved; measure along it, and turn the outer sensors as the maker asks.",
		"The maker's least and largest heights and spacings go first.",
	},
	Cautions: []string{
		"Sensors help and do not see: the driver still looks, and somebody proves them with a post at every gap.",
		"Look behind the bumper before drilling: radar, harness, reinforcement. Paint only as the sensor's maker allows.",
		"A bumper with radar or driver-assistance sensors is left to the trained.",
	},
	Run:    sensorRow,
	Figure: drawSensorRow,
}

// What a row is judged by, in m, common practice.
const (
	widestGap     = 0.3
	nearestGround = 1.0
)

func sensorRow(in *calc.Values, out *calc.Result) *calc.Problem {
	n := in.Int("count")
	width := in.SI("width")
	spacing := width / float64(n)
	blind := spacing / (2 * math.Tan(in.SI("beam")/2))
	positions := ""
	for i := range n {
		if i > 0 {
			positions += ", "
		}
		positions += calc.Format(1e3*spacing*(float64(i)+0.5), 4)
	}
	out.SetText("positions", positions+" mm")
	out.SetSI("spacing", spacing)
	out.SetSI("blind", blind)
	out.Work("Spacing: {width} / {count} = {spacing:4}, the first half of it from the end")
	out.Work("Beams meet: {spacing:4} / (2 × tan({beam} / 2)) = {blind:4}")
	if calc.Over(blind, widestGap) {
		out.Check("the beams meet only {blind} out, more than 300 mm: take more sensors or a wider beam")
	}
	half, tilt := in.SI("beam_up")/2, in.SI("tilt")
	if !calc.Over(half, tilt) {
		out.Note("no distance to the ground: the lower edge of the beam never meets it")
		return nil
	}
	ground := in.SI("height") / math.Tan(half-tilt)
	out.SetSI("ground", ground)
	out.Work("Ground: {height} / tan({beam_up} / 2 − {tilt}) = {ground:4}")
	if calc.Under(ground, nearestGround) {
		out.Check("the lower edge of the beam meets the ground {ground} out, nearer than 1000 mm: expect false alarms; tilt up or mount higher")
	}
	return nil
}
