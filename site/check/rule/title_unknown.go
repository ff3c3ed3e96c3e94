package rule

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
)

var titleUnknown = &check.Rule{
	Name: "title-unknown",
	Firm: true,
	Doc: `The titles in a safety message are those of the hazard register

A message names its hazards by the titles of content/hazards.yaml, so that the
checks know which hazards it answers. Several titles are parted by full stops.`,
	Check: func(p *check.Pass) {
		var titles []string
		for _, h := range p.Book.Register.Hazards {
			titles = append(titles, h.Title)
		}
		for _, m := range p.Sheet.Messages {
			for _, t := range m.Titles {
				if h := p.Book.Register.Titled(t.Text); h != nil {
					continue
				}
				do := "use a title of content/hazards.yaml, or add the hazard there"
				if near := nearTitle(t.Text, titles); near != "" {
					do = "did you mean “" + near + "”?"
				}
				p.Report(t.Span, "the register has no hazard titled “"+t.Text+"”", do)
			}
		}
	},
}

// nearTitle is the title that was probably meant: one with a typing error, or
// one that shares most of its words.
func nearTitle(text string, titles []string) string {
	if near := calc.Nearest(text, titles); near != "" {
		return near
	}
	best, most := "", 0
	for _, title := range titles {
		shared := 0
		for w := range strings.FieldsSeq(strings.ToLower(text)) {
			if len(w) > 3 && strings.Contains(strings.ToLower(title), w) {
				shared++
			}
		}
		if shared > most {
			best, most = title, shared
		}
	}
	return best
}
