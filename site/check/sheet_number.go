package check

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"
)

var sheetNumber = &Rule{
	Name: "sheet-number",
	Firm: true,
	Doc: `A document number in the text is that of a sheet

Where a text names a sheet by its number, that sheet is there; where the number
is the text of a link, the link leads to it.

Bad:

	## Steps

	1. Read EX-99 first.

Good:

	## Steps

	1. Read EX-02 first.
`,
	Check: func(p *Pass) {
		prefixes := make(map[string]bool)
		var known []string
		for _, s := range p.Book.Sheets {
			letters, _, _ := strings.Cut(s.Front.Number, "-")
			prefixes[letters] = true
			known = append(known, s.Front.Number)
		}
		for _, t := range p.facts.passages {
			for _, at := range numbersIn(t.Source, prefixes) {
				number := t.Source[at.Start:at.End]
				if p.Book.Numbered(number) == nil {
					p.Report(t.prose.Span(at.Start, at.End), "there is no sheet with the number "+number, suggest(number, known, "correct the number"))
				}
			}
		}
		for _, l := range p.Sheet.Links {
			if l.Node == nil {
				continue
			}
			text := strings.TrimSpace(p.Sheet.Prose(l.Node, nil).Text)
			named := p.Book.Numbered(text)
			if target := p.Book.Linked(p.Sheet, l); named != nil && target != nil && target != named {
				p.Report(l.Span, "the link's text is "+text+", and it leads to "+target.Front.Number, "link to "+named.File+", or correct the number")
			}
		}
	},
}

// numbersIn finds what looks like a document number of this book: the letters
// of one of its areas, a hyphen, two digits or more.
func numbersIn(text string, prefixes map[string]bool) []sheet.Span {
	var list []sheet.Span
	for i := 1; i+2 < len(text); i++ {
		if text[i] != '-' || !digit(text[i+1]) || !digit(text[i+2]) {
			continue
		}
		start, end := i, i+1
		for start > 0 && text[start-1] >= 'A' && text[start-1] <= 'Z' {
			start--
		}
		for end < len(text) && digit(text[end]) {
			end++
		}
		bounded := (start == 0 || !nameByte(text[start-1]) && text[start-1] != '.') && (end == len(text) || !nameByte(text[end]))
		if prefixes[text[start:i]] && start < i && bounded {
			list = append(list, sheet.Span{Start: start, End: end})
		}
	}
	return list
}

var stepNumber = &Rule{
	Name: "step-number",
	Firm: true,
	Doc: `"Step 9" in the text is a step of this sheet

Steps move when one is added. A text that sends the tech to a step that is not
there was not read again. A step of another sheet is named by a link.

Bad:

	## Steps

	1. Look at the drop as step 9 says.

Good:

	## Steps

	1. Look at the drop.
	2. Repeat step 1 with the engine off.
`,
	Check: func(p *Pass) {
		if len(p.Sheet.Steps) == 0 {
			return
		}
		for _, t := range p.facts.passages {
			for i := 1; i < len(t.Words); i++ {
				w := &t.Words[i]
				before := t.Words[i-1].Lower
				if !w.Number || before != "step" && before != "steps" || linked(p.Sheet, t, i) {
					continue
				}
				if n := wholeNumber(w.Text); n > len(p.Sheet.Steps) || n == 0 {
					p.Report(t.span(i-1, i+1), "the sheet has no step "+w.Text, "correct the number; the last step is "+calc.Show(float64(len(p.Sheet.Steps)), 4))
				}
			}
		}
	},
}

// wholeNumber reads digits; 0 for anything else.
func wholeNumber(s string) int {
	n := 0
	for i := range len(s) {
		if !digit(s[i]) || n > 1e6 {
			return 0
		}
		n = n*10 + int(s[i]-'0')
	}
	return n
}

// linked reports whether a word stands in the text of a link to another
// sheet, or in a sentence with one: its step numbers are the other sheet's.
func linked(s *sheet.Sheet, t *passage, word int) bool {
	for _, sen := range t.Sentences {
		if word < sen.First || word >= sen.Last {
			continue
		}
		span := t.sentenceSpan(sen)
		for _, l := range s.Links {
			if l.Node != nil && isIn(l.Node, t.node) && l.Span.Start < span.End && l.Span.End > span.Start && s.Resolve(l.Dest).File != s.File {
				return true
			}
		}
	}
	return false
}
