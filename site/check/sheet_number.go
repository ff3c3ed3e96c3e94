package check

import (
	"strings"

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
		prefixes := p.reader.series()
		for _, t := range p.facts.passages {
			for _, at := range numbersIn(t.Source, prefixes) {
				number := t.Source[at.Start:at.End]
				if p.Book.Numbered(number) == nil {
					p.Report(t.prose.Span(at.Start, at.End), "there is no sheet with the number "+number, suggest(number, numbersOf(p.Book), "correct the number"))
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

// series are the letters with which the book's document numbers start.
func (r *reader) series() map[string]bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	if r.letters == nil || r.lettersOf != r.book {
		r.letters, r.lettersOf = make(map[string]bool), r.book
		for _, number := range numbersOf(r.book) {
			letters, _, _ := strings.Cut(number, "-")
			r.letters[letters] = true
		}
	}
	return r.letters
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
