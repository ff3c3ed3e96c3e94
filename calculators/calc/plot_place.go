package calc

// Place is where a value lies in the drawing, inside the frame or not.
func (p *Plot) Place(x, y float64) Point { return p.at(x, y) }

// Upright draws a line from the bottom to the top of the frame at a value of
// the x axis; outside the frame it draws nothing.
func (p *Plot) Upright(x float64, s Stroke) {
	if x >= p.x0 && x <= p.x1 {
		p.d.Line(p.at(x, p.y0), p.at(x, p.y1), s)
	}
}
