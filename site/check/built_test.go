package check_test

import (
	"os"
	"testing"

	"baybook/calculators"
	"baybook/site/check"
	"baybook/site/sheet"
)

// TestBuiltMessages holds what the build writes over the shipped book: no
// hazard twice in full on one sheet, each at the first step that its work
// brings it to, and never beside a message of the author's.
func TestBuiltMessages(t *testing.T) {
	book, _, err := sheet.Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	cache := check.NewCache(nil)
	cache.Run(book, check.History{})
	messages, written := cache.Messages(), 0
	for _, s := range book.Sheets {
		m := messages(s)
		seen := make(map[*sheet.Hazard]*check.Built)
		for _, b := range m.Built {
			written++
			if seen[b.Hazard] != nil {
				t.Errorf("%s: %s stands twice", s.File, b.Hazard.ID)
			}
			seen[b.Hazard] = b
			if b.Word < b.Hazard.Least {
				t.Errorf("%s: %s is %s, and the register wants %s", s.File, b.Hazard.ID, b.Word, b.Hazard.Least)
			}
		}
		for _, r := range m.Reminders {
			if b := seen[r.Hazard]; b != nil && b.Step != nil && r.Built == b && r.Step.Number <= b.Step.Number {
				t.Errorf("%s: step %d leads back to step %d for %s", s.File, r.Step.Number, b.Step.Number, r.Hazard.ID)
			}
		}
	}
	if written < len(book.Sheets) {
		t.Errorf("%d messages are written in %d sheets", written, len(book.Sheets))
	}
}
