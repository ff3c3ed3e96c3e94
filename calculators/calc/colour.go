package calc

// Colour in a drawing is kept for wires, fuses and safety. An ink is a CSS
// colour; whoever uses one letters its name too, for those who cannot see it.

// casing is how much wider than its colour a wire is drawn in ink, so that a
// white wire is seen on paper and a black one on a dark page.
const casing = 1.8

// Conductor draws a wire through points in the colour of its insulation, with
// dashes of the second colour where it has one.
func (d *Drawing) Conductor(points []Point, width float64, ink, stripe string) {
	d.coloured(points, width+casing, "currentColor", "")
	d.coloured(points, width, ink, "")
	if stripe != "" {
		d.coloured(points, width, stripe, "5 5")
	}
}

func (d *Drawing) coloured(points []Point, width float64, ink, dashes string) {
	if len(points) == 0 {
		return
	}
	d.open("polyline")
	d.body = append(d.body, ` points="`...)
	for i, p := range points {
		if i > 0 {
			d.body = append(d.body, ' ')
		}
		d.number(p.X)
		d.body = append(d.body, ',')
		d.number(p.Y)
	}
	d.body = append(d.body, `" fill="none" stroke="`...)
	d.body = AppendEscaped(d.body, ink)
	d.body = append(d.body, '"')
	d.attr("stroke-width", width)
	if dashes != "" {
		d.body = append(d.body, ` stroke-dasharray="`+dashes+`"`...)
	}
	d.body = append(d.body, "/>"...)
}

// Body draws a rectangle filled with a colour, as a fuse's.
func (d *Drawing) Body(at Point, width, height float64, s Stroke, ink string) {
	d.open("rect")
	d.attr("x", at.X)
	d.attr("y", at.Y)
	d.attr("width", width)
	d.attr("height", height)
	d.body = append(d.body, strokes[s]...)
	d.body = append(d.body, ` fill="`...)
	d.body = AppendEscaped(d.body, ink)
	d.body = append(d.body, `"/>`...)
}
