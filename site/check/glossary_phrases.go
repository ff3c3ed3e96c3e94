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
	met := make(map[string]bool)
	for _, t := range from.Terms {
		for _, n := range t.Not {
			key := strings.ToLower(n)
			if met[key] {
				continue // once is enough, and a thousand times would cost a thousand times as much
			}
			met[key] = true
			p, msg := english.Parse(strings.ReplaceAll(n, "-", " "), stems)
			if msg != "" {
				g.Faults = append(g.Faults, msg)
				continue
			}
			list, g.Terms = append(list, p), append(g.Terms, t.Name)
			g.Names = append(g.Names, key)
		}
	}
	g.Not = english.NewSet(list)
	return g
}
