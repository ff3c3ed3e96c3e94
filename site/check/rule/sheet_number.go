package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var sheetNumber = &check.Rule{
	Name: "sheet-number",
	Firm: true,
	Doc: `A document number in the text is that of a sheet

Where a text names a sheet by its number, that sheet is there; where the number
is the text of a link, the link leads to it.`,
	Check: func(p *check.Pass) {
		prefixes := p.Shared.NumberSeries()
		for _, t := range p.Facts.Passages {
			for _, at := range numbersIn(t.Source, prefixes) {
				number := t.Source[at.Start:at.End]
				if p.Book.Numbered(number) == nil {
					p.Report(t.Prose.Span(at.Start, at.End), "there is no sheet with the number "+number, check.Suggest(number, numbersOf(p.Book), "correct the number"))
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

// numbersOf lists the document numbers of a book.
func numbersOf(book *sheet.Book) []string {
	var list []string
	for _, s := range book.Sheets {
		list = append(list, s.Front.Number)
	}
	return list
}

// numbersIn finds what looks like a document number of this book: the letters
// of one of its areas, a hyphen, two digits or more.
func numbersIn(text string, prefixes map[string]bool) []sheet.Span {
	var list []sheet.Span
	for i := 1; i+2 < len(text); i++ {
		if text[i] != '-' || !english.IsDigit(text[i+1]) || !english.IsDigit(text[i+2]) {
			continue
		}
		start, end := i, i+1
		for start > 0 && text[start-1] >= 'A' && text[start-1] <= 'Z' {
			start--
		}
		for end < len(text) && english.IsDigit(text[end]) {
			end++
		}
		bounded := (start == 0 || !english.IsNameByte(text[start-1]) && text[start-1] != '.') && (end == len(text) || !english.IsNameByte(text[end]))
		if prefixes[text[start:i]] && start < i && bounded {
			list = append(list, sheet.Span{Start: start, End: end})
		}
	}
	return list
}
