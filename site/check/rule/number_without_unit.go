package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
)

var bareNumber = &check.Rule{
	Name:     "number-without-unit",
	Severity: finding.Warning,
	Doc: `A measured number has its unit

"Set the stop to 3" is 3 mm to one reader and 3 turns to the next.`,
	Check: func(p *check.Pass) {
		for _, t := range p.Facts.Passages {
			if t.Kind != check.StepText || t.Step == nil {
				continue
			}
			list := t.Quantities()
			for i, q := range list {
				if q.Bare && !t.Computes(&q) && unitMissing(t.Source, &q, i+1 < len(list) && !list[i+1].Bare && list[i+1].Start-q.NumberEnd <= 5) {
					p.Report(t.Prose.Span(q.Start, q.NumberEnd), "the number "+q.Number+" has no unit", "write the unit that the instrument shows, or what is counted")
				}
			}
		}
	},
}

// unitMissing reports whether a number measures something and says not what:
// one at the end of a phrase behind to, at or of, or one with decimals.
func unitMissing(text string, q *english.Quantity, range_ bool) bool {
	if range_ {
		return false // 11 to 13 V
	}
	after := strings.TrimLeft(text[q.NumberEnd:], " ")
	ends := after == "" || strings.ContainsRune(".,;:)", rune(after[0]))
	before := lastWord(text[:q.Start])
	switch before {
	case "to", "at", "of", "than", "about", "least", "most", "under", "over", "reads", "exactly":
		return ends && !reference(text[:q.Start]) && !isTerminal(q.Number) && q.Number != "1"
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
