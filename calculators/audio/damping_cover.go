package audio

import (
	"math"

	"baybook/calculators/calc"
)

// DampingCover answers how many damping sheets a panel takes.
var DampingCover = &calc.Calculator{
	Name:     "damping-cover",
	Title:    "Damping sheets for a panel",
	Question: "How many damping sheets?",
	Doc:      "The sheets to buy for part of a panel, what they weigh, and how well the covered part is damped.",
	Decides:  "sheets",
	Inputs: []calc.Input{
		{Name: "width", Label: "Panel width", Unit: "m", Min: 0.05, Max: 5, Default: "0.9", Help: "Of the flat part that drums when you knock on it."},
		{Name: "height", Label: "Panel height", Unit: "m", Min: 0.05, Max: 5, Default: "0.6", Help: "Likewise."},
		{Name: "cover", Label: "Covered", Unit: "%", Min: 5, Max: 100, Default: "30",
			Help: "In the middle of the panel, where it bends most. A quarter to a half is often enough (common practice)."},
		{Name: "layers", Label: "Layers", Kind: calc.Count, Min: 1, Max: 4, Default: "1", Help: "One on top of the other."},
		{Name: "sheet_width", Label: "Sheet width", Unit: "m", Min: 0.05, Max: 2, Default: "0.3", Help: "As sold."},
		{Name: "sheet_height", Label: "Sheet height", Unit: "m", Min: 0.05, Max: 2, Default: "0.5", Help: "As sold."},
		{Name: "waste", Label: "Waste", Unit: "%", Min: 0, Max: 50, Default: "10", Help: "Off-cuts; more round holes and beads."},
		{Name: "areal_mass", Label: "Mass of the sheet", Unit: "kg/m2", Min: 0.5, Max: 10, Default: "3.5",
			Help: "Kilograms for each square metre, off the data sheet; about 3.5 for 2 mm of foil and butyl (common practice)."},
		{Name: "metal", Label: "Panel thickness", Unit: "mm", Min: 0.3, Max: 3, Default: "0.8", Help: "Bare metal: a caliper on an edge or a hole."},
		{Name: "metal_modulus", Label: "Panel modulus", Unit: "GPa", Min: 30, Max: 250, Default: "205", Help: "About 205 GPa steel, 70 GPa aluminium."},
		{Name: "layer", Label: "Layer thickness", Unit: "mm", Min: 0.5, Max: 10, Default: "2", Help: "Of one layer as sold."},
		{Name: "layer_modulus", Label: "Layer modulus", Unit: "MPa", Min: 1, Max: 5000, Default: "300",
			Help: "Young's modulus at room temperature, off the data sheet if it gives one; it falls steeply with warmth."},
		{Name: "layer_loss", Label: "Layer loss factor", Min: 0.01, Max: 2, Default: "0.8", Help: "Likewise, at the same temperature."},
	},
	Outputs: []calc.Output{
		{Name: "sheets", Label: "Sheets to buy"},
		{Name: "area", Label: "Covered", Unit: "m2"},
		{Name: "mass", Label: "Mass on the panel", Unit: "kg"},
		{Name: "loss_factor", Label: "Loss factor there"},
	},
	Sources: []calc.Source{
		{Text: "Loss factor of a free layer on a panel, Oberst 1952 as in ASTM E756", Standing: "from memory"},
		{Text: "Damping acts at resonance, where the panel bends most, Ungar in Beranek and Ver"},
		{Text: "A sheet of 3.5 kg/m2", Standing: "common practice, no source"},
	},
	Limits: []string{
		"Foil on the sheet makes it a constrained layer, which damps better than computed here.",
		"Moduli and loss are for one temperature and frequency; a hot roof damps much less, a cold one may too.",
		"It quiets a panel that rings. It is no barrier against road or engine noise.",
	},
	Cautions: []string{
		"Keep drain holes, airbag sensors, their openings and exhaust-near metal free; some sheets burn or drip when hot.",
		"Cut foil edges slice hands: wear gloves. A heat gun needs air and no fuel near.",
		"Added mass counts against the vehicle's payload.",
	},
	Run:    dampingCover,
	Figure: drawDampingCover,
}

// OberstLoss is the loss factor of a panel with a free damping layer of loss
// factor loss; stiffness is the layer's modulus over the panel's, thickness
// likewise: η2·e·h·(3 + 6h + 4h² + 2eh³ + e²h⁴) / ((1 + eh)(1 + 4eh + 6eh² + 4eh³ + e²h⁴)).
func OberstLoss(loss, stiffness, thickness float64) float64 {
	e, h := stiffness, thickness
	above := 3 + 6*h + 4*h*h + 2*e*h*h*h + e*e*h*h*h*h
	below := (1 + e*h) * (1 + 4*e*h + 6*e*h*h + 4*e*h*h*h + e*e*h*h*h*h)
	return loss * e * h * above / below
}

// wholeSheets rounds up to whole sheets, and ignores a rounding error above a
// whole number.
func wholeSheets(exact float64) float64 {
	n := math.Ceil(exact)
	if n > 1 && !calc.Over(exact, n-1) {
		n--
	}
	return n
}

func dampingCover(in *calc.Values, out *calc.Result) *calc.Problem {
	layers := float64(in.Int("layers"))
	area := in.SI("width") * in.SI("height") * in.SI("cover")
	exact := area * layers * (1 + in.SI("waste")) / (in.SI("sheet_width") * in.SI("sheet_height"))
	stiffness, thickness := in.SI("layer_modulus")/in.SI("metal_modulus"), layers*in.SI("layer")/in.SI("metal")
	loss := OberstLoss(in.Num("layer_loss"), stiffness, thickness)
	out.SetSI("area", area)
	out.Set("sheets", wholeSheets(exact))
	out.SetSI("mass", area*layers*in.SI("areal_mass"))
	out.Set("loss_factor", loss)
	out.Work("Covered: {width} × {height} × {cover} = {area:4}")
	out.Work("Sheets: {area:4} × {layers} × (1 + {waste}) / ({sheet_width} × {sheet_height}) = {1:4}, rounded up {sheets:6}", exact)
	out.Work("Mass: {area:4} × {layers} × {areal_mass} = {mass:4}")
	out.Work("Oberst: e = {layer_modulus} / {metal_modulus} = {1:4}, h = {layers} × {layer} / {metal} = {2:4}, loss factor "+
		"{loss_factor:4}", stiffness, thickness)
	return nil
}

// drawDampingCover draws the panel with its covered middle, and one sheet, to
// one scale.
func drawDampingCover(in *calc.Values, out *calc.Result) *calc.Drawing {
	width, height := in.SI("width"), in.SI("height")
	d := calc.NewDrawing(320, 300, out.Fill("Panel {width} by {height}, its middle covered to {cover} in "+
		""+count(in.Int("layers"), "layer")+": "+count(int(out.Num("sheets")), "sheet")+" of {sheet_width} by {sheet_height}."))
	sheetWidth, sheetHeight := in.SI("sheet_width"), in.SI("sheet_height")
	scale := math.Min(270/(width+sheetWidth), 170/math.Max(height, sheetHeight))
	left, top := 32.0, 52.0
	w, h := width*scale, height*scale
	d.Rect(calc.Point{X: left, Y: top}, w, h, calc.Outline, calc.Empty)
	part := math.Sqrt(in.SI("cover"))
	x, y := left+w*(1-part)/2, top+h*(1-part)/2
	patch := []calc.Point{{X: x, Y: y}, {X: x + w*part, Y: y}, {X: x + w*part, Y: y + h*part}, {X: x, Y: y + h*part}}
	d.Polygon(patch, calc.Outline, calc.Tint)
	d.Hatch(patch, 6)
	d.Rect(calc.Point{X: left + w + 12, Y: top}, sheetWidth*scale, sheetHeight*scale, calc.Outline, calc.Tint)
	d.Text(calc.Point{X: left, Y: 18}, calc.Start, out.Fill("Panel {width} × {height}, {cover} covered"))
	d.Text(calc.Point{X: left, Y: 36}, calc.Start, "One sheet at its right")
	d.Text(calc.Point{X: left, Y: 252}, calc.Start, out.Fill(count(int(out.Num("sheets")), "sheet")+" of {sheet_width} × {sheet_height}"))
	d.Text(calc.Point{X: left, Y: 270}, calc.Start, out.Fill(count(in.Int("layers"), "layer")+", {mass:3}"))
	d.Text(calc.Point{X: left, Y: 288}, calc.Start, out.Fill("loss factor {loss_factor:3} where covered"))
	return d
}
