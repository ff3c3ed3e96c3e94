package rule

import (
	"baybook/site/check"
	"strings"
	"testing"
	"time"
)

func day(s string) time.Time {
	d, _ := time.Parse(time.DateOnly, s)
	return d
}

// TestRevisionAndDate compares front matter with what is known of the issue
// before.
func TestRevisionAndDate(t *testing.T) {
	for _, tt := range []struct {
		name, front string
		issue       check.Issue
		rule, says  string
	}{
		{"nothing changed", "revision: A", check.Issue{Revision: "A", Date: day("2026-01-02"), Newest: day("2026-01-02")}, "", ""},
		{"both moved", "revision: B", check.Issue{Revision: "A", Date: day("2025-12-01"), Changed: true, Newest: day("2025-12-01")}, "", ""},
		{"letter alone", "revision: B", check.Issue{Revision: "A", Date: day("2026-01-02"), Changed: true}, "revision-date", "the date stayed"},
		{"second issue of a day", "revision: B\ndate: 2026-11-25", check.Issue{Revision: "A", Date: day("2026-11-25"), Changed: true, Newest: day("2026-11-25")}, "", ""},
		{"second change of a day", "revision: A\ndate: 2026-11-25", check.Issue{Revision: "A", Date: day("2026-11-25"), Changed: true}, "revision-date", "has changed since"},
		{"date alone", "revision: A", check.Issue{Revision: "A", Date: day("2025-12-01"), Changed: true}, "revision-date", "the revision stayed"},
		{"neither", "revision: A", check.Issue{Revision: "A", Date: day("2026-01-02"), Changed: true}, "revision-date", "has changed since"},
		{"letter back", "revision: B", check.Issue{Revision: "C", Date: day("2025-12-01")}, "revision-date", "comes before"},
		{"letter on from Z", "revision: AA", check.Issue{Revision: "Z", Date: day("2025-12-01")}, "", ""},
		{"date back", "revision: B", check.Issue{Revision: "A", Date: day("2026-02-01")}, "revision-date", "before that of the issue before"},
		{"changed since approval", "revision: A\napproved: {by: Lead, date: 2026-01-03}", check.Issue{Revision: "A", Date: day("2026-01-02"), Newest: day("2026-01-05")}, "approval-old", "changed since, on 2026-01-05"},
		{"changed today since approval", "revision: B\napproved: {by: Lead, date: 2026-01-03}", check.Issue{Revision: "A", Date: day("2026-01-01"), Newest: today, Changed: true}, "approval-old", "on 2026-11-25"},
		{"approved after", "revision: A\napproved: {by: Lead, date: 2026-01-05}", check.Issue{Revision: "A", Date: day("2026-01-02"), Newest: day("2026-01-05")}, "", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fsys, history := exampleBook(tt.front + "\n")
			history.Sheets = map[string]check.Issue{"area/sheet.md": tt.issue}
			list := checkFS(t, fsys, history)
			if tt.rule == "" {
				if len(list) > 0 {
					t.Error(short(list))
				}
				return
			}
			if len(list) != 1 || list[0].Rule != tt.rule || !strings.Contains(list[0].Message, tt.says) {
				t.Errorf("not %s: %s, but %s", tt.rule, tt.says, short(list))
			}
		})
	}
}

// TestNoClock checks that without a day nothing is said about the future.
func TestNoClock(t *testing.T) {
	fsys, _ := exampleBook("date: 2999-01-01\n")
	if list := checkFS(t, fsys, check.History{}); len(list) > 0 {
		t.Error(short(list))
	}
}
