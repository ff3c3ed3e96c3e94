package check

var injuryAndPropertyMixed = &Rule{
	Name: "injury-and-property-mixed",
	Doc: `A message speaks of injury or of damage, not of both

A reader who has skipped the scratch has skipped the hand with it. Two messages
cost one line more.

Bad:

	## Before you start

	> **WARNING: Breaking glass. Scratched paint.** Glass bursts into the eye, and a buckle scratches the paint.
	> Wear eye protection, pry away from the glass, and lay a cloth over the edge.

Good:

	## Before you start

	> **WARNING: Breaking glass.** Glass bursts into the eye.
	> Wear eye protection, and pry away from the glass.

	> **NOTICE: Scratched paint.** A buckle scratches the paint.
	> Lay a cloth over the edge.
`,
	Check: func(p *Pass) {
		for _, m := range p.Sheet.Messages {
			injury, property := "", ""
			for i, h := range p.namedIn(m) {
				switch {
				case h == nil:
				case h.Injury:
					injury = m.Titles[i].Text
				default:
					property = m.Titles[i].Text
				}
			}
			if injury != "" && property != "" {
				p.Report(m.Span, "the message mixes “"+injury+"”, which can injure, with “"+property+"”, which cannot", "make two messages of it, the graver first")
			}
		}
	},
}
