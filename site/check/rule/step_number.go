package rule

import (
	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var stepNumber = &check.Rule{
	Name: "step-number",
	Firm: true,
	Doc: `"Step 9" in the text is a step of this sheet

Steps move when one is added. A text that sends the tech to a step that is not
there was not read again. A step of another sheet is named by a link.`,
	Check: func(p *check.Pass) {
		if len(p.Sheet.Steps) == 0 {
			return
		}
		for _, t := range p.Facts.Passages {
			for i := 1; i < len(t.Words); i++ {
				w := &t.Words[i]
				before := t.Words[i-1].Lower
				if !w.Number || before != "step" && before != "steps" || linked(p.Sheet, t, i) {
					continue
				}
				if n := wholeNumber(w.Text); n > len(p.Sheet.Steps) || n == 0 {
					p.Report(t.Span(i-1, i+1), "the sheet has no step "+w.Text, "correct the number; the last step is "+calc.Format(float64(len(p.Sheet.Steps)), 4))
				}
			}
		}
	},
}

// wholeNumber reads digits; 0 for anything else.
func wholeNumber(s string) int {
	n := 0
	for i := range len(s) {
		if !english.IsDigit(s[i]) || n > 1e6 {
			return 0
		}
		n = n*10 + int(s[i]-'0')
	}
	return n
}

// linked reports whether a word stands in the text of a link to another
// sheet, or in a sentence with one: its step numbers are the other sheet's.
func linked(s *sheet.Sheet, t *check.Passage, word int) bool {
	for _, sen := range t.Sentences {
		if word < sen.First || word >= sen.Last {
			continue
		}
		span := t.SentenceSpan(sen)
		for _, l := range s.Links {
			if l.Node != nil && check.IsIn(l.Node, t.Node) && l.Span.Start < span.End && l.Span.End > span.Start && s.Resolve(l.Dest).File != s.File {
				return true
			}
		}
	}
	return false
}
