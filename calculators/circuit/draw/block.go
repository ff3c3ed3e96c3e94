package draw

import (
	"math"
	"strconv"
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
	return strings.Join(parts, " · ")
}

// Measures of a title block.
const (
	blockWide = 330.0
	blockHigh = 44.0
)

// frame draws the border of a sheet and the title block in its corner.
func (k *sketch) frame(number, of int) {
	d := k.d
	d.Rect(calc.Point{X: 2, Y: 2}, d.Width-4, d.Height-4, calc.Outline, calc.Empty)
	if k.block == (TitleBlock{}) {
		return
	}
	fields := k.block.fields()
	if of > 1 {
		fields += " · " + strconv.Itoa(number) + "/" + strconv.Itoa(of)
	}
	title := k.block.Title
	wide := math.Min(math.Max(blockWide, 12+math.Max(calc.TextWidth(title, letterSize), calc.TextWidth(fields, letterSize))), d.Width-4)
	left, top := d.Width-2-wide, d.Height-2-blockHigh
	d.Rect(calc.Point{X: left, Y: top}, wide, blockHigh, calc.Outline, calc.Paper)
	d.Line(calc.Point{X: left, Y: top + blockHigh/2}, calc.Point{X: left + wide, Y: top + blockHigh/2}, calc.Thin)
	k.letter(calc.Point{X: left + 6, Y: top + 16}, title, nil)
	k.letter(calc.Point{X: left + 6, Y: top + 16 + blockHigh/2}, fields, nil)
}

// drawBlock adds a frame around the drawing and the title block at its foot.
func (k *sketch) drawBlock() {
	wide := math.Max(calc.TextWidth(k.block.Title, letterSize), calc.TextWidth(k.block.fields(), letterSize))
	k.d.Width = math.Max(k.d.Width, wide+2*margin)
	k.d.Height += blockHigh
	k.frame(1, 1)
}
