package check

import "baybook/site/sheet"

var noticeForInjury = &Rule{
	Name: "notice-for-injury",
	Doc: `NOTICE never stands over a hazard that can injure

NOTICE tells the reader that nobody can be hurt (ANSI Z535.6). Over a hazard
that can injure it is a false promise.

Bad:

	## Before you start

	> **NOTICE: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.

Good:

	## Before you start

	> **CAUTION: Springing clip.** A clip flies into the eye.
	> Wear safety glasses and pull square to the panel.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			for i, h := range p.namedIn(m) {
				if h != nil && h.Injury && m.Word == sheet.Notice {
					p.Report(m.WordSpan, "“"+m.Titles[i].Text+"” can injure, and NOTICE says that nothing can",
						"write "+h.Least.String())
				}
			}
		}
	},
}
