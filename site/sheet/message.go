package sheet

import (
	"strings"

	"github.com/yuin/goldmark/ast"
)

// message turns a block quote that opens in bold with a signal word into a
// Message; nil where it is an ordinary quote.
func (sh *shaping) message(quote *ast.Blockquote) *Message {
	first, ok := quote.FirstChild().(*ast.Paragraph)
	if !ok {
		return nil
	}
	bold, ok := first.FirstChild().(*ast.Emphasis)
	if !ok || bold.Level != 2 {
		return nil
	}
	span := sh.inside(bold)
	opening := string(sh.src[span.Start:span.End])
	signal, rest, ok := strings.Cut(opening, ":")
	if !ok || signal != strings.ToUpper(signal) || strings.TrimSpace(signal) == "" {
		return nil
	}
	m := &Message{Span: span, WordSpan: Span{span.Start, span.Start + len(signal)}, Step: sh.step, Section: sh.section}
	if m.Word, ok = ParseWord(strings.TrimSpace(signal)); !ok {
		sh.fault(m.WordSpan, "signal-word", "“"+signal+"” is not a signal word", "use DANGER, WARNING, CAUTION or NOTICE (ANSI Z535.6)")
		return nil
	}
	m.Titles = splitTitles(rest, span.Start+len(signal)+1)
	if len(m.Titles) == 0 {
		sh.fault(m.Span, "signal-word", "the safety message names no hazard behind its signal word", "write "+m.Word.String()+": and the hazard's title from the register")
	}
	m.SetPos(quote.Pos())
	first.RemoveChild(first, bold)
	if t, ok := first.FirstChild().(*ast.Text); ok {
		t.Segment.Start += len(t.Segment.Value(sh.src)) - len(strings.TrimLeft(string(t.Segment.Value(sh.src)), " "))
	}
	for n := quote.FirstChild(); n != nil; {
		next := n.NextSibling()
		quote.RemoveChild(quote, n)
		m.AppendChild(m, n)
		n = next
	}
	quote.Parent().ReplaceChild(quote.Parent(), quote, m)
	sh.sheet.Messages = append(sh.sheet.Messages, m)
	return m
}

// splitTitles reads the titles behind a signal word, each ended by a full
// stop. at is where they start in the file.
func splitTitles(s string, at int) []Title {
	var titles []Title
	for part := range strings.SplitSeq(s, ".") {
		text := strings.TrimSpace(part)
		if text != "" {
			start := at + strings.Index(part, text)
			titles = append(titles, Title{Text: text, Span: Span{start, start + len(text)}})
		}
		at += len(part) + 1
	}
	return titles
}
