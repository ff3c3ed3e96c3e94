package check

import (
	"bytes"
	"html"
	"strings"

	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// aside runs over the texts of a sheet that stand in no passage, and that its
// page shows all the same.
func (p *Pass) aside(do func(t *phrase.Text, at sheet.Span)) {
	s := p.Sheet
	front := &s.Front
	read := func(text string, at sheet.Span) {
		if text != "" {
			do(p.facts.words.Read(text), at)
		}
	}
	do(p.facts.front.title, front.Place("title"))
	for _, t := range p.facts.front.tools {
		do(t, front.Place("tools"))
	}
	for _, t := range p.facts.front.materials {
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
	p.shown(read)
}

// shown runs over the texts of figures, links, listings and calculators.
func (p *Pass) shown(read func(text string, at sheet.Span)) {
	s := p.Sheet
	for _, f := range s.Figures {
		read(f.Alt, f.Span)
	}
	for _, l := range s.Links {
		if l.Node != nil {
			read(string(l.Node.Title), l.Span)
		}
	}
	for _, f := range s.Fences {
		read(f.Code, f.Span)
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

// drawn looks at the words in a drawing, all together: labels are set anywhere.
func (p *Pass) drawn(src *finding.Source) {
	n := &never{pass: p, src: src}
	words, at := drawnWords(src.Text())
	n.alone(phrase.Read(words, p.reader.stems), at)
}

// drawnWords are the words in an SVG drawing, its title and description and
// the texts of its attributes among them, and the stretch where they stand.
func drawnWords(svg []byte) (string, sheet.Span) {
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
