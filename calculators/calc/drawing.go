package calc

import "math"

// A Drawing is an SVG being drawn, in the style of a workshop drawing: ink on
// paper, no color, everything said by line kind and words. Coordinates are
// pixels with y downwards; a drawing 320 wide fits the smallest phone.
//
// It holds no identifiers, so any number of drawings may stand in one page,
// and uses presentation attributes only: currentColor is the page's ink, the
// class "paper" its background, and both read well where there is no page.
type Drawing struct {
	Width, Height float64
	// Title is the text alternative: what the drawing shows, with its numbers.
	Title string
	// TrueSize makes one unit of the drawing 1 mm on paper.
	TrueSize bool
	body     []byte
}

// A Point is a place in a drawing.
type Point struct{ X, Y float64 }

// A Stroke is a kind of line: its width and its dashes.
type Stroke uint8

const (
	Outline Stroke = iota // a visible edge
	Thin                  // dimensions, leaders, hatching
	Hidden                // an edge behind something
	Center                // an axis
	Heavy                 // what the drawing is about
	Bare                  // no line: a fill alone
	Cut                   // an edge of a template at true size, 0.4 mm
	Scribe                // its center lines and scale, 0.25 mm
)

// strokes gives each kind its attributes.
var strokes = [...]string{
	Outline: ` stroke="currentColor" stroke-width="1.6"`,
	Thin:    ` stroke="currentColor" stroke-width=".8"`,
	Hidden:  ` stroke="currentColor" stroke-width="1.1" stroke-dasharray="5 3"`,
	Center:  ` stroke="currentColor" stroke-width=".8" stroke-dasharray="10 3 2 3"`,
	Heavy:   ` stroke="currentColor" stroke-width="3"`,
	Bare:    ` stroke="none"`,
	Cut:     ` stroke="currentColor" stroke-width=".4"`,
	Scribe:  ` stroke="currentColor" stroke-width=".25"`,
}

// A Fill is what a closed shape is filled with.
type Fill uint8

const (
	Empty Fill = iota // nothing
	Paper             // the background, to cover what lies behind
	Ink               // solid
	Tint              // a light gray
	Shade             // a darker gray
)

var fills = [...]string{
	Empty: ` fill="none"`,
	Paper: ` class="paper" fill="#fff"`,
	Ink:   ` fill="currentColor"`,
	Tint:  ` fill="currentColor" fill-opacity=".12"`,
	Shade: ` fill="currentColor" fill-opacity=".35"`,
}

// NewDrawing starts a drawing of the given size with its text alternative.
func NewDrawing(width, height float64, title string) *Drawing {
	return &Drawing{Width: width, Height: height, Title: title}
}

// put adds markup in which each % stands for the next of the numbers, written
// to a hundredth of a pixel: finer is not seen, and builder and browser round
// alike.
func (d *Drawing) put(form string, numbers ...float64) {
	texts := make([]string, len(numbers))
	for i, v := range numbers {
		texts[i] = FormatPlaces(v, 2)
	}
	d.body = AppendForm(d.body, form, texts...)
}

// Line draws from one point to another.
func (d *Drawing) Line(a, b Point, s Stroke) {
	d.put(`<line x1="%" y1="%" x2="%" y2="%"`, a.X, a.Y, b.X, b.Y)
	d.shut(s, Empty)
}

// Polyline draws through points, open.
func (d *Drawing) Polyline(points []Point, s Stroke) { d.poly("<polyline", points, s, Empty) }

// Polygon draws through points and back to the first.
func (d *Drawing) Polygon(points []Point, s Stroke, f Fill) { d.poly("<polygon", points, s, f) }

func (d *Drawing) poly(element string, points []Point, s Stroke, f Fill) {
	if len(points) > 0 {
		d.Raw(element)
		d.points(points)
		d.shut(s, f)
	}
}

// points writes the corners of an element.
func (d *Drawing) points(points []Point) {
	form := ` points="%,%`
	for _, p := range points {
		d.put(form, p.X, p.Y)
		form = " %,%"
	}
	d.Raw(`"`)
}

// Rect draws a rectangle from its top left corner.
func (d *Drawing) Rect(at Point, width, height float64, s Stroke, f Fill) {
	d.rect(at.X, at.Y, width, height)
	d.shut(s, f)
}

func (d *Drawing) rect(x, y, width, height float64) {
	d.put(`<rect x="%" y="%" width="%" height="%"`, x, y, width, height)
}

// Circle draws a circle.
func (d *Drawing) Circle(center Point, radius float64, s Stroke, f Fill) {
	d.put(`<circle cx="%" cy="%" r="%"`, center.X, center.Y, radius)
	d.shut(s, f)
}

// Arc draws part of a circle, from one angle to another in radians, measured
// from the x axis towards y, which points down.
func (d *Drawing) Arc(center Point, radius, from, to float64, s Stroke) {
	n := max(2, int(math.Ceil(math.Abs(to-from)/(math.Pi/36))))
	points := make([]Point, 0, n+1)
	for i := 0; i <= n; i++ {
		a := from + (to-from)*float64(i)/float64(n)
		points = append(points, Point{center.X + radius*math.Cos(a), center.Y + radius*math.Sin(a)})
	}
	d.Polyline(points, s)
}

// An Anchor is the side of a text that stands at its point.
type Anchor string

const (
	Start  Anchor = "start"
	Middle Anchor = "middle"
	End    Anchor = "end"
)

// TextSize is the size of lettering, legible at the width of a phone.
const TextSize = 12.0

// Text writes text at a point, which is on the base line.
func (d *Drawing) Text(at Point, a Anchor, text string) { d.TextSized(at, a, TextSize, text) }

// TextSized writes text in a given size.
func (d *Drawing) TextSized(at Point, a Anchor, size float64, text string) {
	d.put(`<text x="%" y="%" font-size="%"`, at.X, at.Y, size)
	d.body = AppendForm(d.body, ` text-anchor="%" font-family="sans-serif" fill="currentColor">%</text>`, string(a), text)
}

// Label writes text over a patch of paper, so that lines behind do not cut it.
func (d *Drawing) Label(at Point, a Anchor, text string) {
	w, h := TextWidth(text, TextSize)+4, TextSize+3
	x := at.X - 2
	switch a {
	case Middle:
		x = at.X - w/2
	case End:
		x = at.X - w + 2
	}
	d.rect(x, at.Y-TextSize, w, h)
	d.Raw(` class="paper" fill="#fff"/>`)
	d.Text(at, a, text)
}

// TextWidth estimates how wide a text is; sans-serif lettering of most
// systems stays within it.
func TextWidth(text string, size float64) float64 {
	n := 0
	for range text {
		n++
	}
	return 0.58 * size * float64(n)
}

// Hatch fills a closed outline with thin parallel lines at 45°, the section
// lining of a workshop drawing, with the given spacing in pixels.
func (d *Drawing) Hatch(outline []Point, apart float64) {
	if len(outline) < 3 || apart <= 0 {
		return
	}
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range outline {
		low, high = math.Min(low, p.X+p.Y), math.Max(high, p.X+p.Y)
	}
	for c := (math.Floor(low/(apart*math.Sqrt2)) + 0.5) * apart * math.Sqrt2; c < high; c += apart * math.Sqrt2 {
		cuts := crossings(outline, c)
		for i := 0; i+1 < len(cuts); i += 2 {
			d.Line(Point{cuts[i], c - cuts[i]}, Point{cuts[i+1], c - cuts[i+1]}, Thin)
		}
	}
}

// crossings finds, in order, the x at which the line x + y = c cuts an outline.
func crossings(outline []Point, c float64) []float64 {
	var xs []float64
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		fa, fb := a.X+a.Y-c, b.X+b.Y-c
		if fa < 0 != (fb < 0) {
			xs = append(xs, a.X+(b.X-a.X)*fa/(fa-fb))
		}
	}
	for i := 1; i < len(xs); i++ {
		for j := i; j > 0 && xs[j] < xs[j-1]; j-- {
			xs[j], xs[j-1] = xs[j-1], xs[j]
		}
	}
	return xs
}

// Group opens a group with attributes that hold for what follows until the
// returned function is called.
func (d *Drawing) Group(attributes string) (done func()) {
	d.Raw("<g ")
	d.Raw(attributes)
	d.Raw(">")
	return func() { d.Raw("</g>") }
}

// Raw adds markup as it stands; the caller makes sure that it is well formed.
func (d *Drawing) Raw(markup string) { d.body = append(d.body, markup...) }

// Add adds all that another drawing holds, at the same place.
func (d *Drawing) Add(other *Drawing) { d.body = append(d.body, other.body...) }

// shut ends an element with the kind of its line and what fills it.
func (d *Drawing) shut(s Stroke, f Fill) {
	d.Raw(strokes[s])
	d.Raw(fills[f])
	d.Raw("/>")
}

// AppendSVG writes the drawing as a whole SVG element.
func (d *Drawing) AppendSVG(b []byte) []byte {
	unit := ""
	if d.TrueSize {
		unit = "mm"
	}
	w, h := FormatPlaces(d.Width, 2), FormatPlaces(d.Height, 2)
	b = AppendForm(b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 % %" width="%%" height="%%" role="img" aria-label="%">`,
		w, h, w, unit, h, unit, d.Title)
	return append(append(b, d.body...), "</svg>"...)
}
