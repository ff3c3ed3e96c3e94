package rule

import (
	"slices"
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
)

var partSize = &check.Rule{
	Name: "part-size",
	Firm: true,
	Doc: `A fuse or a wire that the work names is one of its drawing, its lists or its computations

The drawing has a 2 A fuse, the materials a 2 A fuse, and step 7 says 3 A: the
tech fits what the step says. Where a sheet draws its circuit, lists its fuses
and wires or computes them, its preparation, steps, messages, proof and
hand-over name no others, and what the materials list is one of the drawing
where there is one. What the text itself calls an example is left alone.`,
	Check: func(p *check.Pass) {
		known := p.Facts.Parts()
		for _, t := range p.Facts.Passages {
			if !t.TellsWork() || t.Kind == check.Cell || saysExample(t.Source) || strings.Contains(t.Source, "(invented)") {
				continue
			}
			for i := range t.Quantities() {
				q := &t.Quantities()[i]
				if t.Computes(q) {
					continue
				}
				if list, what := known.Of(t.Source, q); list != nil && !list.Has(q) && !computesFuse(p, what) {
					p.Report(t.QuantitySpan(q), "the work names a "+what+" of "+q.String()+", and the sheet's drawing, materials and computations have "+list.String(),
						"name the one that is fitted, or list this one too")
				}
			}
		}
		listsAgainstDrawing(p, known)
	},
}

// computesFuse reports whether the part is a fuse and the sheet computes one:
// repeated-number then compares the two.
func computesFuse(p *check.Pass, what string) bool {
	return what == "fuse" && slices.ContainsFunc(p.Facts.ComputedNumbers(), func(c check.ComputedNumber) bool { return c.Noun == "fuse" })
}

// listsAgainstDrawing compares the materials with the drawing.
func listsAgainstDrawing(p *check.Pass, known *check.PartSizes) {
	for _, t := range p.Facts.Front.Materials {
		for _, q := range english.Quantities(t.Source) {
			drawn, what := known.DrawnWires, "wire"
			if !q.IsGauge() {
				if drawn, what = known.DrawnFuses, "fuse"; q.Unit.Symbol != "A" || !strings.Contains(t.Source, "fuse") {
					continue
				}
			}
			if len(drawn) > 0 && !drawn.Has(&q) {
				p.Report(p.Sheet.Front.Place("materials"), "the materials have a "+what+" of "+q.String()+", and the sheet's drawing has "+drawn.String(), "make the two agree")
			}
		}
	}
}
