package sheet

import (
	"os"
	"testing"

	"baybook/calculators"
)

func TestContentParses(t *testing.T) {
	b, list, err := Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range list {
		t.Logf("%s: %s: %s (%s)", f.Pos, f.Rule, f.Message, f.Do)
	}
	for _, s := range b.Sheets {
		t.Logf("%s: %d steps %d messages %d values %d readings %d questions %d figures %d sections", s.File, len(s.Steps), len(s.Messages), len(s.Values), len(s.Readings), len(s.Questions), len(s.Figures), len(s.Sections))
	}
}
