package calc

// AppendMarkup writes a result as a piece of HTML: verdict and reasons first,
// for they are what a tech must see, then the numbers, the drawing, the
// working, and the cautions that go with every result. The builder and the
// browser both show this same piece.
func AppendMarkup(b []byte, v *Values, r *Result) []byte {
	c := r.calculator
	b = append(b, `<div class="result"><p class="verdict" data-verdict="`...)
	b = append(b, r.Verdict.String()...)
	b = append(b, `"><strong>`...)
	b = append(b, r.Verdict.Title()...)
	b = append(b, `</strong></p>`...)
	b = appendItems(b, "reasons", r.Reasons)
	b = append(b, `<dl class="outputs">`...)
	for i := range c.Outputs {
		o, a := &c.Outputs[i], r.Outputs[i]
		if !a.Present {
			continue
		}
		b = append(b, `<div><dt>`...)
		b = AppendEscaped(b, o.Label)
		b = append(b, `</dt><dd data-output="`...)
		b = append(b, o.Name...)
		b = append(b, `">`...)
		b = AppendEscaped(b, o.Show(a))
		b = append(b, `</dd></div>`...)
	}
	b = append(b, `</dl>`...)
	if c.Figure != nil {
		b = append(b, `<figure class="drawing">`...)
		b = c.Figure(v, r).AppendSVG(b)
		b = append(b, `</figure>`...)
	}
	if len(r.Working) > 0 {
		b = append(b, `<details class="working"><summary>Working</summary>`...)
		b = appendItems(b, "lines", r.Working)
		b = append(b, `</details>`...)
	}
	b = appendItems(b, "cautions", c.Cautions)
	return append(b, `</div>`...)
}

func appendItems(b []byte, class string, items []string) []byte {
	if len(items) == 0 {
		return b
	}
	b = append(b, `<ul class="`+class+`">`...)
	for _, item := range items {
		b = append(b, `<li>`...)
		b = AppendEscaped(b, item)
		b = append(b, `</li>`...)
	}
	return append(b, `</ul>`...)
}

// Summary says a result in one sentence, for a screen reader to speak when a
// number changes.
func Summary(r *Result) string {
	s := r.Verdict.Title() + "."
	for i := range r.calculator.Outputs {
		if a := r.Outputs[i]; a.Present {
			o := &r.calculator.Outputs[i]
			return s + " " + o.Label + " " + o.Show(a) + "."
		}
	}
	return s
}
