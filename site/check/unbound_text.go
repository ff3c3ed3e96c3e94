package check

import (
	"bytes"
	"html"
	"strings"

	"baybook/site/check/english"
	"baybook/site/sheet"
)

// UnboundTexts runs over the texts of a sheet that stand in no passage, and
// that its page shows all the same.
func (f *SheetFacts) UnboundTexts(do func(t *english.Text, at sheet.Span)) {
	s := f.Sheet
	front := &s.Front
	read := func(text string, at sheet.Span) {
		if text != "" {
			do(f.Words.Read(text), at)
		}
	}
	do(f.Front.Title, front.Place("title"))
	for _, t := range f.Front.Tools {
		do(t, front.Place("tools"))
	}
	for _, t := range f.Front.Materials {
		do(t, front.Place("materials"))
	}
	for _, text := range front.Synonyms {
		read(text, front.Place("synonyms"))
	}
	read(front.Owner, front.Place("owner"))
	read(front.Approved.By, front.Place("approved"))
	read(front.Vehicle, front.Place("vehicle"))
	read(front.Order, front.Place("order"))
	for _, w := range front.Waivers {
		read(w.Reason, w.Span)
	}
	for _, sec := range s.Sections {
		read(sec.Title, sec.Span)
	}
	for _, m := range s.Messages {
		for _, t := range m.Titles {
			read(t.Text, t.Span)
		}
	}
	f.shownTexts(read)
}

// shownTexts runs over the texts of figures, links, listings and calculators.
func (f *SheetFacts) shownTexts(read func(text string, at sheet.Span)) {
	s := f.Sheet
	for _, figure := range s.Figures {
		read(figure.Alt, figure.Span)
	}
	for _, l := range s.Links {
		if l.Node != nil {
			read(string(l.Node.Title), l.Span)
		}
	}
	for _, fence := range s.Fences {
		read(fence.Code, fence.Span)
	}
	for _, l := range s.Calculators {
		read(l.Heading, l.Link)
	}
	for _, t := range s.Tables {
		read(t.Caption, t.Link)
	}
	for _, q := range s.Problems {
		read(q.Question, q.Link)
	}
}

// DrawnWords are the words in an SVG drawing, its title and description and
// the texts of its attributes among them, and the stretch where they stand.
func DrawnWords(svg []byte) (string, sheet.Span) {
	var b strings.Builder
	span := sheet.Span{Start: -1}
	add := func(from, to int) {
		if text := bytes.TrimSpace(svg[from:to]); len(text) > 0 {
			b.WriteString(html.UnescapeString(string(text)))
			b.WriteString(" ")
			if span.Start < 0 {
				span.Start = from
			}
			span.End = to
		}
	}
	for at := 0; at < len(svg); {
		rest := svg[at:]
		switch {
		case bytes.HasPrefix(rest, []byte("<!--")):
			at += tagEnd(rest, "-->")
		case bytes.HasPrefix(rest, []byte("<![CDATA[")):
			end := at + tagEnd(rest, "]]>")
			add(at+len("<![CDATA["), max(at+len("<![CDATA["), end-len("]]>")))
			at = end
		case rest[0] == '<':
			end := at + tagEnd(rest, ">")
			for _, name := range [...]string{` aria-label="`, ` title="`, ` aria-label='`, ` title='`} {
				if i := bytes.Index(svg[at:end], []byte(name)); i >= 0 {
					from := at + i + len(name)
					if j := bytes.IndexByte(svg[from:end], name[len(name)-1]); j >= 0 {
						add(from, from+j)
					}
				}
			}
			at = end
		default:
			end := bytes.IndexByte(rest, '<')
			if end < 0 {
				end = len(rest)
			}
			add(at, at+end)
			at += end
		}
	}
	if span.Start < 0 {
		span.Start = 0
	}
	return b.String(), span
}

// tagEnd is where a tag ends, behind its closing mark.
func tagEnd(rest []byte, mark string) int {
	if i := bytes.Index(rest, []byte(mark)); i >= 0 {
		return i + len(mark)
	}
	return len(rest)
}
