package circuit

import (
	"strconv"

	"baybook/calculators/calc"
)

// AppendMarkup writes a study as a piece of HTML: verdict and judgements
// first, then the drawing, what flows in every state, what a short does, what
// to buy, and what the signs mean. The builder and the browser both show this
// same piece.
func AppendMarkup(b []byte, s *Study, v View) []byte {
	state := s.state(v)
	b = append(b, `<div class="circuit-result" data-state="`...)
	b = calc.AppendEscaped(b, s.Network.States[state].Name)
	b = append(b, `">`...)
	b = s.appendVerdict(b)
	b = s.appendDrawings(b, v)
	if text := s.StandbyText(); text != "" {
		b = append(b, `<p class="standby">`...)
		b = calc.AppendEscaped(b, text)
		b = append(b, `</p>`...)
	}
	for i, t := range s.Tables() {
		b = appendTable(b, &t, i == state)
	}
	b = append(b, `<details class="legend"><summary>What the signs mean</summary><dl>`...)
	for _, r := range s.Legend() {
		b = append(b, `<div><dt>`...)
		b = calc.AppendEscaped(b, r[0])
		b = append(b, `</dt><dd>`...)
		b = calc.AppendEscaped(b, r[1])
		b = append(b, `</dd></div>`...)
	}
	return append(b, `</dl></details></div>`...)
}

// A sheet of paper is this much higher than wide inside its border, and takes
// a drawing this wide with lettering that can still be read.
const (
	pageShape = 1.4
	pageWidth = 1000.0
)

// appendDrawings writes the drawing for a screen, and where that is higher
// than a page one for paper, hidden until a page is printed.
func (s *Study) appendDrawings(b []byte, v View) []byte {
	d := s.Drawing(v)
	long := d.Height > 2*pageShape*PhoneWidth
	if long {
		b = append(b, `<figure class="drawing circuit screen-only">`...)
	} else {
		b = append(b, `<figure class="drawing circuit">`...)
	}
	b = d.AppendSVG(b)
	b = append(b, `</figure>`...)
	if long {
		v.Width = pageWidth
		b = append(b, `<figure class="drawing circuit print-only" hidden>`...)
		b = s.Drawing(v).AppendSVG(b)
		b = append(b, `</figure>`...)
	}
	return b
}

// appendVerdict writes the verdict and what is judged; a mistake that is
// shown on purpose is said to be one.
func (s *Study) appendVerdict(b []byte) []byte {
	verdict, title := s.Verdict(), s.Verdict().Title()
	if len(s.Network.Wrong) > 0 {
		verdict, title = calc.Stop, "Wrong: shown so that you know it"
	}
	b = append(b, `<p class="verdict" data-verdict="`...)
	b = append(b, verdict.String()...)
	b = append(b, `"><strong>`...)
	b = append(b, title...)
	b = append(b, `</strong></p>`...)
	if len(s.Judgements) == 0 {
		return b
	}
	b = append(b, `<ul class="reasons">`...)
	for i := range s.Judgements {
		j := &s.Judgements[i]
		b = append(b, `<li data-verdict="`...)
		b = append(b, j.Verdict.String()...)
		b = append(b, `">`...)
		b = calc.AppendEscaped(b, j.Message)
		if j.Do != "" {
			b = append(b, `. `...)
			b = calc.AppendEscaped(b, sentence(j.Do))
		}
		b = append(b, `.</li>`...)
	}
	return append(b, `</ul>`...)
}

// sentence begins a text with a capital letter.
func sentence(s string) string {
	if s != "" && s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

// appendTable writes a table behind its heading, open or shut.
func appendTable(b []byte, t *Table, open bool) []byte {
	b = append(b, `<details class="table"`...)
	if open {
		b = append(b, ` open`...)
	}
	b = append(b, `><summary>`...)
	b = calc.AppendEscaped(b, t.Heading)
	b = append(b, `</summary><table><thead><tr>`...)
	for _, c := range t.Columns {
		b = append(b, `<th scope="col">`...)
		b = calc.AppendEscaped(b, c)
		b = append(b, `</th>`...)
	}
	b = append(b, `</tr></thead><tbody>`...)
	for _, r := range t.Rows {
		b = append(b, `<tr>`...)
		for i, c := range r {
			if i == 0 {
				b = append(b, `<th scope="row">`...)
				b = calc.AppendEscaped(b, c)
				b = append(b, `</th>`...)
				continue
			}
			b = append(b, `<td>`...)
			b = calc.AppendEscaped(b, c)
			b = append(b, `</td>`...)
		}
		b = append(b, `</tr>`...)
	}
	return append(b, `</tbody></table></details>`...)
}

// Summary says a study in one sentence, for a screen reader to speak when a
// value changes.
func Summary(s *Study, v View) string {
	state := s.state(v)
	text := s.Verdict().Title() + ". In the state " + s.Network.States[state].Name
	for i := range s.Network.Branches {
		if b := &s.Network.Branches[i]; s.Network.draws(b) {
			return text + " " + s.branchName(i) + " has " + nodeVolts(s.Solutions[state].Flows[i].Drop) + "."
		}
	}
	return text + " " + strconv.Itoa(len(s.Judgements)) + " judgements."
}
