package site

import (
	"fmt"
	"strings"
)

// Messages lists the safety messages that the build writes over the book, one a
// line: the sheet, the step, the message and why it stands there.
func Messages(o Options) (string, error) {
	b := NewBuilder(o)
	if _, err := b.check(); err != nil {
		return "", err
	}
	told := b.cache.Messages()
	var out strings.Builder
	for _, s := range b.book.Sheets {
		for _, m := range told(s).Built {
			where := "opening"
			if m.Step != nil {
				where = fmt.Sprintf("step %d", m.Step.Number)
			}
			fmt.Fprintf(&out, "%s: note: %s: %s: %s; %s\n", s.File, where, m.Word, m.Hazard.Title, m.Reason())
		}
	}
	return out.String(), nil
}
