package rule

import (
	"bytes"
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var neverOrder = &check.Rule{
	Name: "never-order",
	Firm: true,
	Doc: `Some orders are never given

A bridged or larger fuse, a tap on brakes or restraints, a ground at a brake
pipe, work under a jack alone, an engine in a closed room: content/work.yaml
lists the orders that no sheet gives, with what to do instead. The rule reads the
declared work of the steps, and the words of steps, sections, messages, lists,
right answers, titles of links, texts of figures, listings and drawings. Saying that it must not be done is right. No waiver sets this
aside.`,
	Check: func(p *check.Pass) {
		reported := make(map[*sheet.Step]bool)
		for i, m := range p.Facts.Work.Moments {
			for _, b := range m.Broken {
				s := p.Sheet.Steps[i]
				if !reported[s] {
					reported[s] = true
					p.Report(s.Span, "this order is never given ("+b.Never.ID+"): "+b.By.String(), b.Never.Instead)
				}
			}
		}
		for _, t := range p.Facts.Passages {
			if !ordersWork(t) || t.Step != nil && t.First && reported[t.Step] {
				continue
			}
			wrong := false // what people do wrong is told; an order behind it is none the less one
			for _, s := range t.Sentences {
				if english.TellsFault(t.In(s)) {
					wrong = true
					continue
				}
				if wrong && !startsOrder(p, t.Text, s) {
					continue
				}
				if t.Kind == check.Cell && strings.HasSuffix(t.In(s)[0].Lower, "ing") {
					continue // a row's name; another cell says whether it may be done
				}
				if n, hit := p.Shared.NeverSays.Find(t.Text, s); n != nil {
					p.Report(t.Span(hit.First, hit.Last), "this order is never given ("+n.ID+")", n.Instead)
				}
			}
		}
		p.Facts.UnboundTexts(func(t *english.Text, at sheet.Span) { neverIn(p, p.Sheet.Source, t, at) })
	},
	CheckDrawing: func(p *check.Pass) {
		svg := p.Drawing.Text() // label by label: each is a text of its own
		for at := 0; at < len(svg); {
			end := bytes.IndexByte(svg[at:], '>') + 1
			if end == 0 {
				break
			}
			words, span := check.DrawnWords(svg[at+end : at+end+labelEnd(svg[at+end:])])
			neverIn(p, p.Drawing, english.Read(words, p.Shared.Stems), sheet.Span{Start: at + end + span.Start, End: at + end + span.End})
			at += end
		}
	},
}

// labelEnd is where the text before the next tag ends.
func labelEnd(svg []byte) int {
	if i := bytes.IndexByte(svg, '<'); i >= 0 {
		return i
	}
	return len(svg)
}

// neverIn reports the orders never given in a text that stands by itself.
func neverIn(p *check.Pass, src *finding.Source, t *english.Text, at sheet.Span) {
	for _, s := range t.Sentences {
		if n, hit := p.Shared.NeverSays.Find(t, s); n != nil && startsOrder(p, t, s) {
			p.ReportIn(src, at, "“"+t.Source[t.Words[hit.First].Start:t.Words[hit.Last-1].End]+"” is an order that is never given ("+n.ID+")", n.Instead)
		}
	}
}

// startsOrder reports a sentence whose own verb gives an order.
func startsOrder(p *check.Pass, t *english.Text, s english.Sentence) bool {
	verb, ok := english.Action(t.In(s))
	return ok && p.Shared.Lexicon.Orders(t.In(s)[verb:])
}

// ordersWork reports whether a reader may act on a passage.
func ordersWork(t *check.Passage) bool {
	switch t.Kind {
	case check.QuestionText, check.Explanation:
		return false
	case check.AnswerText:
		return t.Right
	}
	return !t.Under(sheet.Sources)
}
