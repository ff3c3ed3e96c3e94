package calc_test

import (
	"encoding/xml"
	"math"
	"strings"
	"testing"

	"baybook/calculators/calc"
)

// draw gives the SVG of what a function draws on an empty sheet.
func draw(t *testing.T, f func(d *calc.Drawing)) string {
	t.Helper()
	d := calc.NewDrawing(320, 200, `5" < 6" & more`)
	f(d)
	svg := string(d.AppendSVG(nil))
	if err := xml.Unmarshal([]byte(svg), new(struct{ XMLName xml.Name })); err != nil {
		t.Errorf("%v in %s", err, svg)
	}
	return svg
}

func TestDrawing(t *testing.T) {
	svg := draw(t, func(d *calc.Drawing) {
		d.Text(calc.Point{X: 1, Y: 2}, calc.Start, "a < b & c")
		d.Line(calc.Point{X: -0.001, Y: 1e-9}, calc.Point{X: 1.006, Y: 2}, calc.Outline)
		d.Polygon(nil, calc.Outline, calc.Ink)
		d.Dimension(calc.Point{X: 5, Y: 5}, calc.Point{X: 5, Y: 5}, 10, "nothing")
	})
	for _, piece := range []string{`viewBox="0 0 320 200"`, `aria-label="5&#34; &lt; 6&#34; &amp; more"`, "a &lt; b &amp; c",
		`x1="0" y1="0" x2="1.01"`} {
		if !strings.Contains(svg, piece) {
			t.Errorf("no %q in %s", piece, svg)
		}
	}
	for _, never := range []string{"<style", "<script", "href", " id=", "-0\"", "polygon", "nothing"} {
		if strings.Contains(svg, never) {
			t.Errorf("%q in %s", never, svg)
		}
	}
}

func TestTrueSize(t *testing.T) {
	d := calc.NewDrawing(210, 297, "a sheet")
	d.TrueSize = true
	if svg := string(d.AppendSVG(nil)); !strings.Contains(svg, `viewBox="0 0 210 297" width="210mm" height="297mm"`) {
		t.Errorf("a true-size sheet is %s", svg)
	}
}

// TestHatch: a square with a diagonal of 56.6 has 11 lines of lining 5 apart, as
// many as are asked for.
func TestHatch(t *testing.T) {
	square := []calc.Point{{X: 10, Y: 10}, {X: 50, Y: 10}, {X: 50, Y: 50}, {X: 10, Y: 50}}
	svg := draw(t, func(d *calc.Drawing) { d.Hatch(square, 5) })
	if n := strings.Count(svg, "<line"); n != 11 {
		t.Errorf("%d lines 5 apart in a square with a diagonal of 56.6", n)
	}
	if n := strings.Count(draw(t, func(d *calc.Drawing) { d.Hatch(square, 0); d.Hatch(square[:2], 5) }), "<line"); n != 0 {
		t.Errorf("%d lines where nothing can be lined", n)
	}
}

func TestSpan(t *testing.T) {
	for _, text := range []string{"short", strings.Repeat("long ", 30)} {
		svg := draw(t, func(d *calc.Drawing) { d.Span(300, 318, 40, text) })
		if !strings.Contains(svg, text) {
			t.Errorf("%q is not lettered", text)
		}
	}
	svg := draw(t, func(d *calc.Drawing) { d.Span(310, 319, 40, "9 mm wide") })
	if strings.Contains(svg, `<text x="314.5"`) {
		t.Error("the label of a span at the edge leaves the drawing")
	}
}

// TestPlot: ticks are round, a curve out of the frame is cut, and a mark out
// of it is left out.
func TestPlot(t *testing.T) {
	svg := draw(t, func(d *calc.Drawing) {
		p := calc.NewPlot(d, calc.Point{X: 40, Y: 20}, 260, 140, 20, 20000, -30, 6, true, "Frequency, Hz", "Level, dB")
		p.Curve(func(x float64) float64 { return -x / 100 }, calc.Heavy)
		p.Curve(func(float64) float64 { return math.NaN() }, calc.Thin)
		p.Mark(100, -3, "here")
		p.Mark(100, -40, "below")
		p.Mark(5, 0, "before")
		p.Upright(1, calc.Hidden)
		p.Across(20, calc.Hidden)
		if at := p.Place(20, -30); at != (calc.Point{X: 40, Y: 160}) {
			t.Errorf("the lower left corner is at %v", at)
		}
		if at := p.Place(20000, 6); math.Abs(at.X-300) > 1e-9 || math.Abs(at.Y-20) > 1e-9 {
			t.Errorf("the upper right corner is at %v", at)
		}
	})
	for _, piece := range []string{">20<", ">100<", ">2k<", ">20k<", ">-30<", ">0<", ">here<"} {
		if !strings.Contains(svg, piece) {
			t.Errorf("no %q in %s", piece, svg)
		}
	}
	for _, never := range []string{"below", "before", "dasharray", "NaN"} {
		if strings.Contains(svg, never) {
			t.Errorf("%q in %s", never, svg)
		}
	}
}
