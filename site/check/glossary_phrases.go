package check

import (
	"strings"

	"baybook/site/check/english"
	"baybook/site/sheet"
)

// GlossaryPhrases are the names that no sheet may use, ready to be looked for.
type GlossaryPhrases struct {
	Not *english.Set
	// Terms are the names to use, Names those not used in small letters, both
	// by phrase.
	Terms, Names []string
	// Faults are the names that are no phrase.
	Faults []string
}

func readGlossary(from *sheet.Glossary, stems *english.Stems) *GlossaryPhrases {
	g := &GlossaryPhrases{}
	if from == nil {
		from = &sheet.Glossary{}
	}
	var list []english.Pattern
	for _, t := range from.Terms {
		for _, n := range t.Not {
			p, msg := english.Parse(strings.ReplaceAll(n, "-", " "), stems)
			if msg != "" {
				g.Faults = append(g.Faults, msg)
				continue
			}
			list, g.Terms = append(list, p), append(g.Terms, t.Name)
			g.Names = append(g.Names, strings.ToLower(n))
		}
	}
	g.Not = english.NewSet(list)
	return g
}
