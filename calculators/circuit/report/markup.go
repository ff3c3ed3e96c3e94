// Package report shows a circuit: as a piece of a page, as text for the prompt
// and as JSON. Its functions only read what they are given, so goroutines may call
// them at the same time.
package report

import (
	"strconv"

	"baybook/calculators/calc"
	"baybook/calculators/circuit/draw"
	"baybook/calculators/circuit/format"
	"baybook/calculators/circuit/judge"
)

// put adds a text. It is not inlined: the markup's code would then be a good
// part of the browser's download.
//
//go:noinline
func put(b []byte, s string) []byte { return append(b, s...) }

// AppendMarkup writes a study as a piece of HTML: verdict and judgments
// first, then the drawing, what flows in every state, what a short does, what
// to buy, and what the signs mean. The builder and the browser both show this
// same piece.
func AppendMarkup(b []byte, a *judge.Assessment, v draw.View) []byte {
	state := v.StateOf(a)
	b = put(b, `<div class="circuit-result" data-state="`)
	b = calc.AppendEscaped(b, a.Network.States[state].Name)
	b = put(b, `">`)
	b = appendVerdict(b, a)
	b = appendDrawings(b, a, v)
	if text := StandbyText(a); text != "" {
		b = put(b, `<p class="standby">`)
		b = calc.AppendEscaped(b, text)
		b = put(b, `</p>`)
	}
	for _, t := range Tables(a) {
		b = appendTable(b, &t)
	}
	b = put(b, `<details class="legend"><summary>What the signs mean</summary><dl>`)
	for _, r := range Legend(a) {
		b = put(b, `<div><dt>`)
		b = calc.AppendEscaped(b, r[0])
		b = put(b, `</dt><dd>`)
		b = calc.AppendEscaped(b, r[1])
		b = put(b, `</dd></div>`)
	}
	return put(b, `</dl></details></div>`)
}

// appendDrawings writes the drawing for a narrow screen, then the sheets of the
// wiring diagram for a wide one and for paper. Style sheets show the one or
// the other.
func appendDrawings(b []byte, a *judge.Assessment, v draw.View) []byte {
	b = put(b, `<figure class="drawing circuit narrow">`)
	b = draw.Drawing(a, draw.View{State: v.State, Width: v.Width}).AppendSVG(b)
	b = put(b, `</figure>`)
	for _, d := range draw.Sheets(a, v) {
		b = put(b, `<figure class="drawing circuit across" tabindex="0">`)
		b = d.AppendSVG(b)
		b = put(b, `</figure>`)
	}
	return b
}

// appendVerdict writes the verdict and what is judged; a mistake that is
// shown on purpose is said to be one.
func appendVerdict(b []byte, a *judge.Assessment) []byte {
	verdict, title := a.Verdict(), title(a)
	if len(a.Network.Wrong) > 0 {
		verdict = calc.Stop
	}
	b = put(b, `<p class="verdict" data-verdict="`)
	b = put(b, verdict.String())
	b = put(b, `"><strong>`)
	b = put(b, title)
	b = put(b, `</strong></p>`)
	if len(a.Judgments) == 0 {
		return b
	}
	b = put(b, `<ul class="reasons">`)
	for i := range a.Judgments {
		j := &a.Judgments[i]
		b = put(b, `<li data-verdict="`)
		b = put(b, j.Verdict.String())
		b = put(b, `">`)
		b = calc.AppendEscaped(b, j.Message)
		if j.Do != "" && !saidBefore(a, i) {
			b = put(b, `. `)
			b = calc.AppendEscaped(b, sentence(j.Do))
		}
		b = put(b, `.</li>`)
	}
	return put(b, `</ul>`)
}

// title is the verdict in words; a mistake that is shown on purpose is said
// to be one.
func title(a *judge.Assessment) string {
	if len(a.Network.Wrong) > 0 {
		return "Wrong: shown so that you know it"
	}
	return a.Verdict().Title()
}

// sentence begins a text with a capital letter.
func sentence(s string) string {
	if s != "" && s[0] >= 'a' && s[0] <= 'z' {
		return string(s[0]-'a'+'A') + s[1:]
	}
	return s
}

// appendTable writes a table behind its heading.
func appendTable(b []byte, t *Table) []byte {
	b = put(b, `<details class="table"><summary>`)
	b = calc.AppendEscaped(b, t.Heading)
	b = put(b, `</summary><table><thead><tr>`)
	for _, c := range t.Columns {
		b = put(b, `<th scope="col">`)
		b = calc.AppendEscaped(b, c)
		b = put(b, `</th>`)
	}
	b = put(b, `</tr></thead><tbody>`)
	for _, r := range t.Rows {
		b = put(b, `<tr>`)
		for i, c := range r {
			if i == 0 {
				b = put(b, `<th scope="row">`)
				b = calc.AppendEscaped(b, c)
				b = put(b, `</th>`)
				continue
			}
			b = put(b, `<td>`)
			b = calc.AppendEscaped(b, c)
			b = put(b, `</td>`)
		}
		b = put(b, `</tr>`)
	}
	return put(b, `</tbody></table></details>`)
}

// Summary says a study in one sentence, for a screen reader to speak when a
// value changes.
func Summary(a *judge.Assessment, v draw.View) string {
	state := v.StateOf(a)
	text := title(a) + ". In the state " + a.Network.States[state].Name
	if !a.Solutions[state].Solved() {
		return text + " there is no solution."
	}
	for i := range a.Network.Branches {
		if b := &a.Network.Branches[i]; a.Network.Draws(b) {
			return text + " " + branchName(a, i) + " has " + format.NodeVolts(a.Solutions[state].Flows[i].Drop) + "."
		}
	}
	return text + " " + strconv.Itoa(len(a.Judgments)) + " judgements."
}

// saidBefore reports whether an earlier judgment already gives the same
// advice.
func saidBefore(a *judge.Assessment, judgment int) bool {
	for i := range judgment {
		if a.Judgments[i].Do == a.Judgments[judgment].Do {
			return true
		}
	}
	return false
}
