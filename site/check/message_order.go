package check

import (
	"baybook/site/finding"
	"baybook/site/sheet"
)

var messageOrder = &Rule{
	Name:     "message-order",
	Severity: finding.Warning,
	Doc: `Of several messages in a row the gravest stands first

Who reads only the first reads the one that can kill.

Bad:

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

Good:

	## Before you start

	> **WARNING: Exhaust gas.** Exhaust gas kills without a smell.
	> Run the engine outdoors or with extraction, for 3 min at most.

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			if m.Step != nil {
				continue // the site puts those in order
			}
			before, ok := m.PreviousSibling().(*sheet.Message)
			if ok && m.Word > before.Word {
				p.Report(m.WordSpan, m.Word.String()+" stands behind "+before.Word.String(), "move the graver message up", withNote(p.Sheet.Source, before.Span.Start, "it stands behind this one"))
			}
		}
	},
}
