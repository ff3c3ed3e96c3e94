package check

import (
	"strings"

	"baybook/site/finding"
	"baybook/site/sheet"
)

var bareNumber = &Rule{
	Name:     "number-without-unit",
	Severity: finding.Warning,
	Doc: `A measured number has its unit

"Set the stop to 3" is 3 mm to one reader and 3 turns to the next.

Bad:

	## Steps

	1. Set the stop to 3.

Good:

	## Steps

	1. Set the stop to 3 mm (common practice).
`,
	Check: func(p *Pass) {
		for _, t := range p.facts.passages {
			if t.kind != stepText || t.step == nil {
				continue
			}
			list := t.quantities()
			for i, q := range list {
				if q.Bare && !isLink(t, q.number) && unitMissing(t.Source, &q, i+1 < len(list) && !list[i+1].Bare && list[i+1].number.Start-q.number.End <= 5) {
					p.Report(t.prose.Span(q.number.Start, q.number.End), "the number "+q.Number+" has no unit", "write the unit that the instrument shows, or what is counted")
				}
			}
		}
	},
}

// unitMissing reports a number that measures something and says not what: one
// at the end of a phrase behind to, at or of, or one with decimals.
func unitMissing(text string, q *quantity, range_ bool) bool {
	if range_ {
		return false // 11 to 13 V
	}
	after := strings.TrimLeft(text[q.number.End:], " ")
	ends := after == "" || strings.ContainsRune(".,;:)", rune(after[0]))
	before := lastWord(text[:q.number.Start])
	switch before {
	case "to", "at", "of", "than", "about", "least", "most", "under", "over", "reads", "exactly":
		return ends && !reference(text[:q.number.Start]) && !isTerminal(q.Number) && q.Number != "1"
	}
	return false
}

// isTerminal reports a terminal designation of DIN 72552.
func isTerminal(number string) bool {
	switch number {
	case "15", "30", "31", "49", "50", "53", "54", "56", "58", "75", "85", "86", "87":
		return true
	}
	return false
}

func lastWord(text string) string {
	fields := strings.Fields(text)
	if len(fields) == 0 {
		return ""
	}
	return strings.ToLower(fields[len(fields)-1])
}

// reference reports text that leads to the number of a place: "go back to
// step", "of section", "from 4 to".
func reference(text string) bool {
	fields := strings.Fields(strings.ToLower(text))
	for i := len(fields) - 1; i >= max(0, len(fields)-4); i-- {
		switch strings.Trim(fields[i], ".,:") {
		case "step", "steps", "section", "figure", "table", "slot", "pin", "pins", "terminal", "channel", "class", "page", "position", "row", "paragraph", "factor", "ratio", "level", "number", "times":
			return true
		}
	}
	return false
}

// isLink reports whether a number is part of a computed value or a reading,
// whose own rules look at it.
func isLink(t *passage, at sheet.Span) bool {
	span := t.prose.Span(at.Start, at.End)
	for c := t.node.FirstChild(); c != nil; c = c.NextSibling() {
		switch n := c.(type) {
		case *sheet.Value:
			if span.Start >= n.Span.Start && span.Start < n.Span.End {
				return true
			}
		case *sheet.Reading:
			if span.Start >= n.Span.Start && span.Start < n.Span.End {
				return true
			}
		}
	}
	return false
}
