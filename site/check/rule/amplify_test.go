package rule

import (
	"strings"
	"testing"
	"time"

	"baybook/site/check"
)

// TestAmplification checks that short files do not cost what long ones may:
// each of these took seconds, or all memory, before its bound.
func TestAmplification(t *testing.T) {
	long := 20 * time.Second // far over what it takes, far under what it took on a busy machine
	step := func(s string) string { text, _ := exampleSheet("## Steps\n\n1. " + s + "\n"); return text }
	plain, _ := exampleSheet("")
	for _, tt := range []struct{ name, file, text, rule string }{
		{"table padded to its header", "area/sheet.md", plain + "\n|" + strings.Repeat("a|", 4000) + "\n|" + strings.Repeat("-|", 4000) + "\n" + strings.Repeat("|b|\n", 9000), "table-size"},
		{"equal terms", "glossary.yaml", strings.Repeat("- {term: bulkhead, not: [firewall], meaning: A sheet.}\n", 18_000), "glossary-term"},
		{"equal names to avoid", "glossary.yaml", strings.Repeat("- {term: a, not: [lamp], meaning: A.}\n", 20_000), "glossary-term"},
		{"broken links on a line", "area/sheet.md", step(strings.Repeat("[a](b.md) ", 1900)), "link"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fsys := exampleFS()
			text, _ := exampleSheet("")
			fsys["area/sheet.md"] = sheetFile(text)
			fsys[tt.file] = sheetFile(tt.text)
			start := time.Now()
			list := checkFS(t, fsys, check.History{Today: today})
			took := time.Since(start)
			t.Log(took, len(list))
			if took > long {
				t.Errorf("it took %s", took)
			}
			refuses(t, list, tt.file, tt.rule)
		})
	}
}
