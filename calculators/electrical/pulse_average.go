package electrical

import (
	"math"

	"baybook/calculators/calc"
)

// PulseAverage answers what a meter shows on a lamp wire that is switched on
// and off many times a second.
var PulseAverage = &calc.Calculator{
	Name:     "pulse-average",
	Title:    "Meter reading on a pulsed wire",
	Question: "What does the meter show on a pulsed lamp wire?",
	Doc:      "The average that a meter set to DC volts shows on a wire that a module switches on and off, and the rms value that a lamp glows by.",
	Decides:  "average",
	Inputs: []calc.Input{
		{Name: "high", Label: "Voltage while on", Unit: "V", Min: 0, Max: 60, Default: "14.4", Help: "About what the battery has, read with the lamp fully on."},
		{Name: "low", Label: "Voltage while off", Unit: "V", Min: 0, Max: 60, Default: "0", Help: "0 V on most wires; more where the module tests the lamp."},
		{Name: "duty", Label: "Duty cycle", Unit: "%", Min: 0, Max: 100, Default: "50", Help: "The share of the time that it is on, off a scope or a meter with a duty range."},
	},
	Outputs: []calc.Output{
		{Name: "average", Label: "Average", Unit: "V", Help: "a meter set to DC volts"},
		{Name: "rms", Label: "RMS value", Unit: "V", Help: "a meter that adds DC and AC in true rms; what heats a lamp"},
	},
	Sources: []calc.Source{
		{Text: "Mean and root mean square of a rectangular wave, by definition"},
	},
	Limits: []string{
		"A slow meter shows the average only while the pulses are fast; below about 20 Hz its digits jump.",
		"A filament glows by the rms value, an LED by the average current.",
	},
	Cautions: []string{
		"A relay or a module on a pulsed wire chatters, burns or sets a fault code: take the signal from the data bus interface or from an unpulsed wire.",
		"Never tap a lamp that the law asks for without checking that it still works as before.",
		"Follow the vehicle maker's service information and local code.",
	},
	Run:    pulseAverage,
	Figure: drawPulseAverage,
}

func pulseAverage(in *calc.Values, out *calc.Result) *calc.Problem {
	high, low, duty := in.SI("high"), in.SI("low"), in.SI("duty")
	if calc.Over(low, high) {
		return calc.NewProblem("low", out.Fill("{low} is above the {high} while on; exchange the two"))
	}
	out.SetSI("average", duty*high+(1-duty)*low)
	out.SetSI("rms", math.Sqrt(duty*high*high+(1-duty)*low*low))
	out.Work("Average: {1:3} × {high} + {2:3} × {low} = {average:4}", duty, 1-duty)
	out.Work("RMS: sqrt({1:3} × ({high})² + {2:3} × ({low})²) = {rms:4}", duty, 1-duty)
	return nil
}

// drawPulseAverage draws three periods of the wave with both readings.
func drawPulseAverage(in *calc.Values, out *calc.Result) *calc.Drawing {
	high, low, duty := in.Num("high"), in.Num("low"), in.SI("duty")
	average, rms := out.Num("average"), out.Num("rms")
	d := calc.NewDrawing(320, 226, out.Fill("A wave between {low} and {high}, on for {duty} of the time: average {average}, rms {rms}."))
	p := calc.NewPlot(d, calc.Point{X: 40, Y: 44}, 264, 146, 0, 3, 0, math.Max(1, high*1.15), false, "Periods", "V")
	var wave []calc.Point
	for i := range 3 {
		at := float64(i)
		for _, v := range [...]calc.Point{{X: at, Y: high}, {X: at + duty, Y: high}, {X: at + duty, Y: low}, {X: at + 1, Y: low}} {
			wave = append(wave, p.Place(v.X, v.Y))
		}
	}
	d.Polyline(wave, calc.Heavy)
	p.Across(average, calc.Hidden)
	p.Across(rms, calc.Center)
	d.Text(calc.Point{X: 304, Y: 16}, calc.End, out.Fill("Dashed: average {average}"))
	d.Text(calc.Point{X: 304, Y: 32}, calc.End, out.Fill("Dash-dot: rms {rms}"))
	return d
}
