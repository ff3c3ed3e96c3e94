package check

import "baybook/site/sheet"

var injuryWordForProperty = &Rule{
	Name: "injury-word-for-property",
	Doc: `DANGER, WARNING and CAUTION are kept for hazards that can injure

A word that promises injury over a scratched panel teaches people to skip it
(ANSI Z535.6 keeps NOTICE for property). Where somebody can be hurt as well,
name that hazard in a message of its own.

Bad:

	## Before you start

	> **CAUTION: Scratched paint.** A buckle scratches the paint.
	> Lay a cloth over the edge first.

Good:

	## Before you start

	> **NOTICE: Scratched paint.** A buckle scratches the paint.
	> Lay a cloth over the edge first.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			property := false
			for _, h := range p.namedIn(m) {
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
