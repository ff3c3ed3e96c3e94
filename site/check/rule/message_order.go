package rule

import (
	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var messageOrder = &check.Rule{
	Name:     "message-order",
	Firm:     true,
	Severity: finding.Warning,
	Doc: `Of several messages in a row the gravest stands first

Who reads only the first reads the one that can kill.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			if m.Step != nil {
				continue // the site puts those in order
			}
			before, ok := m.PreviousSibling().(*sheet.Message)
			if ok && m.Word > before.Word {
				p.Report(m.WordSpan, m.Word.String()+" stands behind "+before.Word.String(), "move the graver message up", check.WithNote(p.Sheet.Source, before.Span.Start, "it stands behind this one"))
			}
		}
	},
}
