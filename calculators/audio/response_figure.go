package audio

import (
	"math"

	"baybook/calculators/calc"
)

// A response is a level over frequency to be drawn: dB for a frequency in Hz.
type response struct {
	level func(hertz float64) float64
	probe float64 // Hz, ringed
	line  float64 // Hz, a dashed upright
	peak  float64 // dB, the highest that the frame must hold
}

// draw plots the response in a frame 264 wide whose upper edge is at y. The
// frequency axis reaches to probe and line where it stays legible.
func (r response) draw(d *calc.Drawing, y, height float64) {
	low, top := math.Min(r.probe, r.line)/2.5, math.Max(r.probe, r.line)*2.5
	if few := 30 * low; top < few { // at least a decade and a half
		middle := math.Sqrt(low * top)
		low, top = middle/math.Sqrt(30), middle*math.Sqrt(30)
	}
	if top > 4000*low { // a wider axis could not be read: stay near the line
		low, top = math.Max(low, r.line/60), math.Min(top, r.line*60)
	}
	above := 6 * math.Ceil(math.Max(r.peak+1, 6)/6)
	p := calc.NewPlot(d, calc.Point{X: 40, Y: y}, 264, height, low, top, above-36, above, true, "Frequency, Hz", "Level, dB")
	p.Across(0, calc.Outline)
	p.Upright(r.line, calc.Hidden)
	p.Curve(r.level, calc.Heavy)
	p.Mark(r.probe, r.level(r.probe), "")
}
