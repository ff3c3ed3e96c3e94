package electrical

import "baybook/calculators/calc"

// drawSupplyBudget sets what is drawn, stacked, beside what the alternator
// gives at idle and on the road, to one scale.
func drawSupplyBudget(in *calc.Values, out *calc.Result) *calc.Drawing {
	base, other, average := in.Num("base"), in.Num("other"), out.Num("average")
	alternator, load := in.Num("alternator"), base+other+average
	idle := alternator * in.SI("idle_share")
	d := calc.NewDrawing(320, 236, out.Fill("Drawn {1:3 A}: vehicle {base}, other {other}, amplifiers on music {2:3 A}. The "+
		"alternator gives about {3:3 A} at idle and {alternator} on the road.", load, average, idle))
	const left, width = 14.0, 292.0
	most := max(load, alternator)
	at := func(a float64) float64 { return left + width*a/most }
	bar := func(from, to, y float64, f calc.Fill) {
		d.Rect(calc.Point{X: at(from), Y: y}, at(to)-at(from), 18, calc.Outline, f)
	}
	bar(0, base, 26, calc.Empty)
	bar(base, base+other, 26, calc.Tint)
	bar(base+other, load, 26, calc.Shade)
	bar(0, idle, 84, calc.Empty)
	bar(0, alternator, 130, calc.Empty)
	d.Line(calc.Point{X: at(load), Y: 26}, calc.Point{X: at(load), Y: 156}, calc.Hidden)
	for _, l := range []struct {
		y    float64
		text string
	}{
		{18, "Drawn {1:3 A}"},
		{76, "Alternator at idle {2:3 A}, left {idle_spare}"},
		{122, "On the road {alternator}, left {cruise_spare}"},
	} {
		d.Label(calc.Point{X: left, Y: l.y}, calc.Start, out.Fill(l.text, load, idle))
	}
	for i, k := range []struct {
		f    calc.Fill
		text string
	}{
		{calc.Empty, "vehicle {base}"},
		{calc.Tint, "other {other}"},
		{calc.Shade, "amplifiers on music {average}"},
	} {
		y := 172 + 20*float64(i)
		d.Rect(calc.Point{X: left, Y: y}, 14, 14, calc.Outline, k.f)
		d.Text(calc.Point{X: left + 22, Y: y + 11}, calc.Start, out.Fill(k.text))
	}
	return d
}
