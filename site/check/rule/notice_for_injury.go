package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var noticeForInjury = &check.Rule{
	Name: "notice-for-injury",
	Firm: true,
	Doc: `NOTICE never stands over a hazard that can injure

NOTICE tells the reader that nobody can be hurt (ANSI Z535.6). Over a hazard
that can injure it is a false promise.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			for i, h := range p.Facts.HazardsNamed(m) {
				if h != nil && h.Injury && m.Word == sheet.Notice {
					p.Report(m.WordSpan, "“"+m.Titles[i].Text+"” can injure, and NOTICE says that nothing can",
						"write "+h.Least.String())
				}
			}
		}
	},
}
