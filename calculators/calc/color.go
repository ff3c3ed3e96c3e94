package calc

// Color in a drawing is kept for wires, fuses and safety. An ink is a CSS
// color; whoever uses one letters its name too, for those who cannot see it.

// casing is how much wider than its color a wire is drawn in ink, so that a
// white wire is seen on paper and a black one on a dark page.
const casing = 1.8

// Conductor draws a wire through points in the color of its insulation, with
// dashes of the second color where it has one.
func (d *Drawing) Conductor(points []Point, width float64, ink, stripe string) {
	d.colored(points, width+casing, "currentColor", "")
	d.colored(points, width, ink, "")
	if stripe != "" {
		d.colored(points, width, stripe, "5 5")
	}
}

func (d *Drawing) colored(points []Point, width float64, ink, dashes string) {
	if len(points) == 0 {
		return
	}
	d.Raw("<polyline")
	d.points(points)
	d.body = AppendForm(d.body, ` fill="none" stroke="%"`, ink)
	d.put(` stroke-width="%"`, width)
	if dashes != "" {
		d.body = AppendForm(d.body, ` stroke-dasharray="%"`, dashes)
	}
	d.Raw("/>")
}

// Body draws a rectangle filled with a color, as a fuse's.
func (d *Drawing) Body(at Point, width, height float64, s Stroke, ink string) {
	d.rect(at.X, at.Y, width, height)
	d.Raw(strokes[s])
	d.body = AppendForm(d.body, ` fill="%"/>`, ink)
}
