package rule

import (
	"baybook/site/check"
	"baybook/site/sheet"
)

var injuryWordForProperty = &check.Rule{
	Name: "injury-word-for-property",
	Firm: true,
	Doc: `DANGER, WARNING and CAUTION are kept for hazards that can injure

A word that promises injury over a scratched panel teaches people to skip it
(ANSI Z535.6 keeps NOTICE for property). Where somebody can be hurt as well,
name that hazard in a message of its own.`,
	Check: func(p *check.Pass) {
		for _, m := range p.Sheet.Messages {
			property := false
			for _, h := range p.Facts.HazardsNamed(m) {
				if h == nil || h.Injury {
					property = false
					break
				}
				property = true
			}
			if property && m.Word > sheet.Notice {
				p.Report(m.WordSpan, "this message speaks of damage alone, and "+m.Word.String()+" promises injury", "write NOTICE")
			}
		}
	},
}
