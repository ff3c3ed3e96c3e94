package calc

import "math"

// A Plot is a diagram inside a drawing: level over frequency, say.
type Plot struct {
	d                      *Drawing
	left, top, right, base float64
	x0, x1, y0, y1         float64
	logX                   bool
}

// NewPlot draws the frame, grid and lettering of a diagram whose upper left
// corner is at and whose size is width by height pixels. With logX the x axis
// is logarithmic, gridded at 1, 2 and 5 of each decade. Both axes carry the
// given titles, unit included.
func NewPlot(d *Drawing, at Point, width, height, x0, x1, y0, y1 float64, logX bool, xTitle, yTitle string) *Plot {
	p := &Plot{d: d, left: at.X, top: at.Y, right: at.X + width, base: at.Y + height,
		x0: x0, x1: x1, y0: y0, y1: y1, logX: logX}
	for _, x := range p.xTicks() {
		d.Line(p.at(x, y0), p.at(x, y1), Thin)
		d.TextSized(Point{p.at(x, y0).X, p.base + 13}, Middle, 11, tickName(x))
	}
	step := niceStep((y1 - y0) / 5)
	for y := math.Ceil(y0/step-1e-9) * step; y <= y1+step*1e-9; y += step {
		d.Line(p.at(x0, y), p.at(x1, y), Thin)
		d.TextSized(Point{p.left - 4, p.at(x0, y).Y + 4}, End, 11, Format(y, 4))
	}
	d.Rect(at, width, height, Outline, Empty)
	d.TextSized(Point{(p.left + p.right) / 2, p.base + 27}, Middle, 11, xTitle)
	d.TextSized(Point{p.left, p.top - 6}, Start, 11, yTitle)
	return p
}

// at maps a value to its place in the drawing.
func (p *Plot) at(x, y float64) Point {
	t := (x - p.x0) / (p.x1 - p.x0)
	if p.logX {
		t = math.Log(x/p.x0) / math.Log(p.x1/p.x0)
	}
	return Point{p.left + t*(p.right-p.left), p.base - (y-p.y0)/(p.y1-p.y0)*(p.base-p.top)}
}

// Curve draws f over the whole width, clipped at the frame.
func (p *Plot) Curve(f func(x float64) float64, s Stroke) {
	const n = 160
	var run []Point
	for i := 0; i <= n; i++ {
		t := float64(i) / n
		x := p.x0 + t*(p.x1-p.x0)
		if p.logX {
			x = p.x0 * math.Pow(p.x1/p.x0, t)
		}
		y := f(x)
		if math.IsNaN(y) || y < p.y0 || y > p.y1 {
			p.d.Polyline(run, s)
			run = nil
			continue
		}
		run = append(run, p.at(x, y))
	}
	p.d.Polyline(run, s)
}

// Mark draws a ring at a value and labels it, if there is a label; a value
// outside the frame is left out.
func (p *Plot) Mark(x, y float64, label string) {
	if x < p.x0 || x > p.x1 || y < p.y0 || y > p.y1 || math.IsNaN(y) {
		return
	}
	at := p.at(x, y)
	p.d.Circle(at, 3.5, Outline, Paper)
	if label == "" {
		return
	}
	anchor, dx := Start, 6.0
	if at.X > (p.left+p.right)/2 {
		anchor, dx = End, -6
	}
	p.d.Label(Point{at.X + dx, at.Y - 6}, anchor, label)
}

// Across draws a level line, such as half power.
func (p *Plot) Across(y float64, s Stroke) {
	if y >= p.y0 && y <= p.y1 {
		p.d.Line(p.at(p.x0, y), p.at(p.x1, y), s)
	}
}

// xTicks are where the x axis is gridded.
func (p *Plot) xTicks() []float64 {
	var ticks []float64
	if !p.logX {
		step := niceStep((p.x1 - p.x0) / 5)
		for x := math.Ceil(p.x0/step-1e-9) * step; x <= p.x1+step*1e-9; x += step {
			ticks = append(ticks, x)
		}
		return ticks
	}
	for decade := math.Pow(10, math.Floor(math.Log10(p.x0))); decade <= p.x1; decade *= 10 {
		for _, m := range [...]float64{1, 2, 5} {
			if x := m * decade; x >= p.x0*(1-1e-9) && x <= p.x1*(1+1e-9) {
				ticks = append(ticks, x)
			}
		}
	}
	return ticks
}

// tickName shortens thousands as the trade letters a frequency axis.
func tickName(x float64) string {
	if x >= 1000 {
		return Format(x/1000, 3) + "k"
	}
	return Format(x, 3)
}

// niceStep is the next of 1, 2, 5 × 10^n at or above v.
func niceStep(v float64) float64 {
	decade := math.Pow(10, math.Floor(math.Log10(v)))
	for _, m := range [...]float64{1, 2, 5} {
		if m*decade >= v*(1-1e-9) {
			return m * decade
		}
	}
	return 10 * decade
}
