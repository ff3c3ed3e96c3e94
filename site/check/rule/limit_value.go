package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var limitValue = &check.Rule{
	Name: "limit-value",
	Firm: true,
	Doc: `A limit reads what the register says

The text of a limit: link, and of a reading that is judged by limit=, must agree
with the row of content/limits.yaml at the digits that it shows. When a row
changes, this finds every sheet that must be issued anew; the fix writes the
new number, and the sheet then needs a new revision and date.`,
	Check: func(p *check.Pass) {
		for _, l := range p.Sheet.Limits {
			if !agreesWith(l.Words, l.Limit) {
				want := wordsFor(l.Words, l.Limit)
				p.Report(l.Span, "the register gives "+l.Limit.String()+" for "+l.Limit.ID+", and the text says “"+l.Words+"”",
					"write "+want+", and give the sheet a new revision and date", fixLimit(p, l, want), check.WithNote(p.Book.Limits.Source, l.Limit.Span.Start, "the limit stands here"))
			}
		}
	},
}

// agreesWith reports whether words give the numbers of a limit at the digits
// that they show, in whatever unit, and do not turn its bound round.
func agreesWith(words string, l *sheet.Limit) bool {
	written := english.Quantities(words)
	if len(written) != len(l.Numbers) {
		return false
	}
	if len(written) == 2 && written[0].Bare && !written[1].Bare { // 11 to 13 V
		written[0].Unit, written[0].Bare = written[1].Unit, false
	}
	for i, q := range written {
		v, ok := english.Within(l.Numbers[i].Value, l.Numbers[i].Unit, q.Unit)
		if !ok || q.Bare != l.Numbers[i].Bare || !q.Tolerates(v) {
			return false
		}
	}
	bounds, judges := l.Judges()
	return !judges || !contradicts(words, bounds)
}

// wordsFor are the words that say a limit right, with its bound where the
// author's own had one.
func wordsFor(words string, l *sheet.Limit) string {
	if strings.HasPrefix(strings.ToLower(words), "at ") {
		return l.String()
	}
	return l.Amount()
}
