package electrical

import "baybook/calculators/calc"

// drawFuseSize sets the load, the fuse and what the wire may carry beside
// each other to one scale: the fuse must be the middle one.
func drawFuseSize(in *calc.Values, out *calc.Result) *calc.Drawing {
	load, fuse, limit := in.Num("load"), out.Num("fuse"), out.Num("wire_limit")
	verdict := "the fuse protects the wire."
	switch {
	case fuse == 0:
		verdict = "no fuse carries the load."
	case calc.Over(fuse, limit):
		verdict = "the fuse is too large for the wire."
	}
	d := calc.NewDrawing(320, 176, out.Fill("Load {load}, fuse "+fuseName(out)+", wire {wire} may carry {wire_limit}: "+verdict))
	const left, width = 14.0, 292.0
	most := max(load, fuse, limit)
	at := func(amps float64) float64 { return left + width*amps/most }
	bars := []struct {
		amps float64
		text string
		fill calc.Fill
	}{
		{load, "Load {load}", calc.Tint},
		{fuse, "Fuse " + fuseName(out), calc.Empty},
		{limit, "{wire} may carry {wire_limit}", calc.Shade},
	}
	for i, b := range bars {
		d.Rect(calc.Point{X: left, Y: 30 + 46*float64(i)}, at(b.amps)-left, 16, calc.Outline, b.fill)
	}
	if fuse > 0 {
		d.Line(calc.Point{X: at(fuse), Y: 70}, calc.Point{X: at(fuse), Y: 146}, calc.Hidden)
	}
	for i, b := range bars {
		d.Label(calc.Point{X: left, Y: 23 + 46*float64(i)}, calc.Start, out.Fill(b.text))
	}
	d.TextWithin(calc.Point{X: 160, Y: 166}, "Right: load < fuse ≤ wire")
	return d
}

// fuseName is the fuse with its color in brackets, as a template.
func fuseName(out *calc.Result) string {
	switch {
	case !out.Get("fuse").Present:
		return "none"
	case out.Get("colour").Present:
		return "{fuse} ({colour})"
	}
	return "{fuse}"
}
