package check

import "baybook/site/check/phrase"

var mustNotSay = &Rule{
	Name: "must-not-say",
	Firm: true,
	Doc: `No sheet gives what only the vehicle's maker may give

Printed waiting times for restraint systems run from a second to half an hour,
so any one of them is wrong somewhere. The register lists what is never
written; a sheet refers to the maker's service information instead. No waiver
sets this aside.

Bad:

	## Before you start

	Wait 10 minutes, then unplug the airbag.

Good:

	## Before you start

	Wait as long as the maker's service information says before work near an airbag.
`,
	Check: func(p *Pass) {
		reg := p.reader.register
		for _, t := range p.facts.passages {
			for i := range t.Sentences {
				// Two sentences together: "Wait 10 minutes. Then unplug the airbag."
				window := phrase.Sentence{First: t.Sentences[i].First, Last: t.Sentences[min(i+1, len(t.Sentences)-1)].Last}
				for _, hit := range reg.never.Find(t.Text, window, phrase.Said) {
					if hit.First >= t.Sentences[i].Last && i+1 < len(t.Sentences) {
						continue // the next window finds it
					}
					h := reg.hazards[reg.neverOwner[hit.Pattern]]
					p.Report(t.span(window.First, window.Last), "this gives a figure or a rule for “"+h.Title+"” that only the vehicle's maker may give",
						"take it out, and refer to the maker's service information")
				}
			}
		}
	},
}
