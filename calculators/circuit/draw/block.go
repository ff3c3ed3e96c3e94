package draw

import (
	"math"
	"strings"

	"baybook/calculators/calc"
)

// A TitleBlock holds the data fields of ISO 7200 that a drawing of a circuit
// carries; those that are empty are left out.
type TitleBlock struct{ Title, Number, Revision, Date string }

// fields are the lines under the title.
func (b *TitleBlock) fields() string {
	var parts []string
	for _, f := range [...][2]string{{"No. ", b.Number}, {"Rev. ", b.Revision}, {"", b.Date}} {
		if f[1] != "" {
			parts = append(parts, f[0]+f[1])
		}
	}
	return strings.Join(parts, "   ")
}

// blockHigh is how high a title block is.
const blockHigh = 40.0

// drawBlock adds a frame around the drawing and the title block at its foot.
func (k *sketch) drawBlock() {
	wide := math.Max(calc.TextWidth(k.block.Title, letterSize), calc.TextWidth(k.block.fields(), letterSize))
	k.d.Width = math.Max(k.d.Width, wide+2*margin)
	top := k.d.Height
	k.d.Height += blockHigh
	k.d.Rect(calc.Point{X: 1.5, Y: 1.5}, k.d.Width-3, k.d.Height-3, calc.Outline, calc.Empty)
	k.d.Line(calc.Point{X: 1.5, Y: top}, calc.Point{X: k.d.Width - 1.5, Y: top}, calc.Outline)
	k.letter(calc.Point{X: margin, Y: top + 15}, k.block.Title, nil)
	k.letter(calc.Point{X: margin, Y: top + 15 + lineStep}, k.block.fields(), nil)
}
