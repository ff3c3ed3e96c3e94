package sheet

import (
	"strconv"
	"strings"
)

// Holds says what the book was found to hold, so that a row that went missing
// shows: "61 sheets, 45 hazards, 58 limits, 120 terms, 40 acts".
func (b *Book) Holds() string {
	var parts []string
	count := func(n int, what string) {
		if n == 1 {
			what = strings.TrimSuffix(what, "s")
		}
		parts = append(parts, strconv.Itoa(n)+" "+what)
	}
	count(len(b.Sheets), "sheets")
	count(len(b.Register.Hazards), "hazards")
	count(len(b.Limits.Limits), "limits")
	count(len(b.Glossary.Terms), "terms")
	if w := b.Words; w != nil {
		count(len(w.Sources)+len(w.Verbs)+len(w.Harms)+len(w.Protection)+len(w.Vague)+len(w.Stems), "words")
	}
	if b.Work != nil {
		count(len(b.Work.Acts), "acts")
	}
	return strings.Join(parts, ", ")
}
