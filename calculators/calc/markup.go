package calc

// longestNumber is how many bytes an answer may have to share a line with
// others; a longer one is words, and gets its own line.
const longestNumber = 40

// AppendMarkup writes a result as a piece of HTML: verdict and reasons first,
// for they are what a tech must see, then the numbers, the drawing, the
// working, and the cautions that go with every result. The builder and the
// browser both show this same piece. root leads from the page to the top of the
// site ("../"); where the page is not known it is "", and the page itself puts
// it before data-page of each link.
func AppendMarkup(b []byte, v *Values, r *Result, root string) []byte {
	c := r.calculator
	b = AppendForm(b, `<div class="result"><p class="verdict" data-verdict="%"><strong>%</strong></p>`, r.Verdict.String(), r.Verdict.Title())
	b = appendReasons(b, r, root)
	if c.Search != nil {
		standing := "This is the final answer."
		if v.more {
			standing = "A first answer; it is being refined."
		}
		b = AppendForm(b, `<p class="standing">%</p>`, standing)
	}
	b = append(b, `<dl class="outputs">`...)
	for i := range c.Outputs {
		if o, a := &c.Outputs[i], r.Outputs[i]; a.Present {
			shown := o.Format(a)
			switch {
			case i == c.Decisive():
				b = append(b, `<div class="decides">`...)
			case len(shown) > longestNumber:
				b = append(b, `<div class="words">`...)
			default:
				b = append(b, `<div>`...)
			}
			b = AppendForm(b, `<dt>%</dt><dd data-output="%">%</dd></div>`, o.Label, o.Name, shown)
		}
	}
	b = append(b, `</dl>`...)
	if c.Figure != nil {
		b = append(b, `<figure class="drawing">`...)
		b = append(c.Figure(v, r).AppendSVG(b), `</figure>`...)
	}
	if len(r.Working) > 0 {
		b = append(b, `<details class="working"><summary>Working</summary>`...)
		b = append(appendItems(b, "lines", r.Working), `</details>`...)
	}
	return append(appendItems(b, "cautions", c.Cautions), `</div>`...)
}

// Summary says a result in one sentence, the verdict and the output that
// decides, for a screen reader to speak when a number changes.
func Summary(r *Result) string {
	s := r.Verdict.Title() + "."
	if o, a := r.Decisive(); o != nil {
		s += " " + o.Label + " " + o.Format(a) + "."
	}
	return s
}

// Decisive is the output that answers the calculator's question and its
// answer; where these inputs leave that one out, the first that there is, and
// nil where there is none.
func (r *Result) Decisive() (*Output, Answer) {
	c := r.calculator
	at := c.Decisive()
	for i := 0; i < len(r.Outputs) && !r.Outputs[at].Present; i++ {
		at = i
	}
	if !r.Outputs[at].Present {
		return nil, Answer{}
	}
	return &c.Outputs[at], r.Outputs[at]
}
