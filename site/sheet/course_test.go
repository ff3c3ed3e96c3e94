package sheet_test

import (
	"fmt"
	"strings"
	"testing"
	"time"
)

// TestCourse checks that every sheet stands behind what it needs, and that a
// circle ends and is told of.
func TestCourse(t *testing.T) {
	files := folder()
	for number, needs := range map[string]string{"CO-01": "", "CO-02": "CO-01", "CO-03": "CO-02, CO-01", "CO-04": "CO-05", "CO-05": "CO-04"} {
		save(files, "course/"+strings.ToLower(number)+".md", fmt.Sprintf("---\ntitle: %s\nnumber: %s\nrevision: A\ndate: 2026-01-02\nowner: Bench\nkind: guide\nminutes: 5\nskill: apprentice\nneeds: [%s]\n---\nWords.\n", number, number, needs), time.Time{})
	}
	book, _ := load(t, nil, files)
	stage := make(map[string]int)
	for i, list := range book.Course() {
		for _, s := range list {
			stage[s.Front.Number] = i
		}
	}
	for _, s := range book.Sheets {
		for _, n := range book.NeededBy(s) {
			if _, circle := book.NeedsItself(s); !circle && stage[n.Front.Number] >= stage[s.Front.Number] {
				t.Errorf("%s stands in stage %d, what it needs in %d", s.Front.Number, stage[s.Front.Number], stage[n.Front.Number])
			}
		}
	}
	if stage["CO-01"] != 0 || stage["CO-02"] != 1 || stage["CO-03"] != 2 {
		t.Errorf("stages: %v", stage)
	}
	for number, want := range map[string]bool{"CO-03": false, "CO-04": true, "CO-05": true} {
		if _, circle := book.NeedsItself(book.Numbered(number)); circle != want {
			t.Errorf("%s needs itself: %v", number, circle)
		}
	}
}
