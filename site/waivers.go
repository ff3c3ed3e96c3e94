package site

import (
	"cmp"
	"fmt"
	"strings"
)

// Waivers lists what the sheets of a book set aside, a line each: where, what,
// at which step, why, and who says so.
func Waivers(o Options) (string, error) {
	book, _, err := Check(o)
	if err != nil {
		return "", err
	}
	var b strings.Builder
	count := 0
	for _, s := range book.Sheets {
		for _, w := range s.Front.Waivers {
			count++
			where := ""
			if w.Step > 0 {
				where = fmt.Sprintf(" at step %d", w.Step)
			}
			fmt.Fprintf(&b, "%s: %s%s: %s (%s)\n", s.Source.Position(w.Span.Start), cmp.Or(w.Hazard, w.Rule), where, w.Reason, w.By)
		}
	}
	fmt.Fprintf(&b, "%d set aside\n", count)
	return b.String(), nil
}
