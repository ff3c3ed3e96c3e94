package audio

import (
	"math"

	"baybook/calculators/calc"
)

// GainVoltage answers which voltage to set an amplifier's gain to.
var GainVoltage = &calc.Calculator{
	Name:     "gain-voltage",
	Title:    "Voltage to set a gain to",
	Question: "Which voltage do I set the gain to?",
	Doc:      "The voltage at the amplifier's terminals that stands for a power into a load, with its peak and current.",
	Decides:  "voltage",
	Inputs: []calc.Input{
		{Name: "power", Label: "Power, rms", Unit: "W", Min: 1, Max: 5000, Default: "75",
			Help: "The smaller of what the amplifier gives and the speaker takes, rms, one channel."},
		{Name: "load", Label: "Load", Unit: "ohm", Min: 0.5, Max: 32, Default: "4",
			Help: "Nominal, of everything on this channel together: the calculator “Load of voice coils together” adds it up."},
	},
	Outputs: []calc.Output{
		{Name: "voltage", Label: "Voltage, rms", Unit: "V", Figures: 4},
		{Name: "peak", Label: "Voltage, peak", Unit: "V", Figures: 4},
		{Name: "current", Label: "Current, rms", Unit: "A"},
	},
	Sources: []calc.Source{
		{Text: "P = U²/R with U rms at the terminals, the CTA definition of amplifier power turned round"},
	},
	Limits: []string{
		"A true speaker is not a resistor: at its resonance it takes less, between resonances a little more.",
		"Set it with a sine tone and the speakers off; a cheap meter reads true rms only near mains frequency, so take 50 Hz or 60 Hz.",
		"Clipping starts where the wave flattens, which a scope shows and a voltmeter does not.",
	},
	Cautions: []string{
		"Take the speakers off while a test tone runs: it can burn a tweeter and harm hearing in seconds.",
		"Over about 60 V peak do not touch the terminals.",
	},
	Run:    gainVoltage,
	Figure: drawGainVoltage,
}

func gainVoltage(in *calc.Values, out *calc.Result) *calc.Problem {
	power, load := in.SI("power"), in.SI("load")
	out.SetSI("voltage", math.Sqrt(power*load))
	out.SetSI("peak", math.Sqrt(2*power*load))
	out.SetSI("current", math.Sqrt(power/load))
	out.Work("Voltage: sqrt({power} × {load}) = {voltage:4}")
	out.Work("Peak: sqrt(2) × {voltage:4} = {peak:4}")
	out.Work("Current: {voltage:4} / {load} = {current:4}")
	return nil
}

// drawGainVoltage draws one sine with its peak and its rms value.
func drawGainVoltage(in *calc.Values, out *calc.Result) *calc.Drawing {
	d := calc.NewDrawing(320, 178, out.Fill("A sine of {power} into {load}: {voltage} on the meter, {peak} at its peak."))
	const left, width, axis, high = 14.0, 190.0, 96.0, 64.0
	d.Line(calc.Point{X: left, Y: axis}, calc.Point{X: left + width, Y: axis}, calc.Thin)
	var wave []calc.Point
	for i := range 97 {
		t := float64(i) / 96
		wave = append(wave, calc.Point{X: left + width*t, Y: axis - high*math.Sin(2*math.Pi*t)})
	}
	d.Polyline(wave, calc.Heavy)
	d.Line(calc.Point{X: left, Y: axis - high}, calc.Point{X: 222, Y: axis - high}, calc.Thin)
	d.Line(calc.Point{X: left, Y: axis - high/math.Sqrt2}, calc.Point{X: 222, Y: axis - high/math.Sqrt2}, calc.Hidden)
	d.Text(calc.Point{X: 226, Y: axis - high + 2}, calc.Start, out.Fill("peak {peak}"))
	d.Text(calc.Point{X: 226, Y: axis - high/math.Sqrt2 + 8}, calc.Start, out.Fill("rms {voltage}"))
	d.Text(calc.Point{X: 226, Y: axis + 4}, calc.Start, "0 V")
	return d
}
