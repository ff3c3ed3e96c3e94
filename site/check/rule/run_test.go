package rule

import (
	"baybook/site/check"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// TestFailingRuleIsAFinding checks that a rule that panics stops neither the
// others nor the program.
func TestFailingRuleIsAFinding(t *testing.T) {
	broken := &check.Rule{Name: "broken", Check: func(p *check.Pass) {
		p.Report(sheet.Span{}, "found before it failed", "go on")
		panic("no such step")
	}}
	book, _, err := sheet.Load(exampleFS(), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	list := check.Run([]*check.Rule{broken}, book, check.History{})
	if len(list) != 2 || list[1].Severity != finding.Error || !strings.Contains(list[1].Message, "no such step") || list[1].Rule != "broken" {
		t.Error(short(list))
	}
}

// TestSameOrderEveryTime checks that findings come in the same order however
// the sheets were shared out.
func TestSameOrderEveryTime(t *testing.T) {
	fsys := exampleFS()
	for i := range 40 {
		text, _ := exampleSheet(fmt.Sprintf("number: EX-%02d\n\n## Steps\n\n1. The lamp should light as required.\n2. Read [x](missing.md) and start the engine.\n", i+10))
		fsys[fmt.Sprintf("area/s%02d.md", i)] = sheetFile(text)
	}
	first := checkFS(t, fsys, check.History{Today: today})
	if len(first) < 100 {
		t.Fatalf("%d findings", len(first))
	}
	for range 5 {
		if again := checkFS(t, fsys, check.History{Today: today}); !reflect.DeepEqual(first, again) {
			t.Fatal("the findings differ from run to run")
		}
	}
}

// TestFixes applies what the rules offer and demands that the faults are gone
// and every other byte as it was.
func TestFixes(t *testing.T) {
	fsys, history := exampleBook("## Steps\n\n1. Expect a drop of [0.99 V](calc:wire-drop?current=6A&length=4m&wire=14AWG#drop) at the firewall.\n2. Expect [0.99](calc:wire-drop?current=6A&length=4m&wire=14AWG#drop) there, about [990 mV](calc:wire-drop?current=6A&length=4m&wire=14AWG#drop).\n3. Look at both Firewalls.\n")
	list := checkFS(t, fsys, history)
	if len(list) != 5 {
		t.Fatal(short(list))
	}
	before := fsys["area/sheet.md"].Data
	after, err := finding.Apply(before, list.Fixes("area/sheet.md"))
	if err != nil {
		t.Fatal(err)
	}
	want := strings.NewReplacer("[0.99 V]", "[0.41 V]", "[0.99]", "[0.41 V]", "[990 mV]", "[406 mV]", "firewall", "bulkhead", "Firewalls", "Bulkheads").Replace(string(before))
	if string(after) != want {
		t.Errorf("got\n%s\nwant\n%s", after, want)
	}
	fsys["area/sheet.md"].Data = after
	if list := checkFS(t, fsys, history); len(list) > 0 {
		t.Error(short(list))
	}
}

// TestFixesKeepLineEnds checks that a fix leaves CR LF and a byte order mark
// alone.
func TestFixesKeepLineEnds(t *testing.T) {
	fsys, history := exampleBook("## Steps\n\n1. Expect [0.99 V](calc:wire-drop?current=6A&length=4m&wire=14AWG#drop).\n")
	text := "\ufeff" + strings.ReplaceAll(string(fsys["area/sheet.md"].Data), "\n", "\r\n")
	fsys["area/sheet.md"] = sheetFile(text)
	list := checkFS(t, fsys, history)
	after, err := finding.Apply([]byte(text), list.Fixes("area/sheet.md"))
	if err != nil || len(list) != 1 {
		t.Fatal(err, short(list))
	}
	if want := strings.Replace(text, "0.99 V", "0.41 V", 1); string(after) != want {
		t.Errorf("got %q", after)
	}
}

// TestHazardsAreListed holds what a sheet is told to show: each hazard with
// its place, once a step.
func TestHazardsAreListed(t *testing.T) {
	fsys, _ := exampleBook("hazards: [battery-short]\n\n## Steps\n\n1. Start the engine.\n2. Start the engine, then start the engine again.\n\n## Prove it\n\n- With the engine running, the lamp lights.\n")
	book, _, err := sheet.Load(fsys, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, p := range check.Hazards(book, book.Sheet("area/sheet")) {
		step := 0
		if p.Step != nil {
			step = p.Step.Number
		}
		got = append(got, fmt.Sprintf("%s %s %d %t", p.Hazard.ID, p.Least, step, p.Whole))
	}
	want := "battery-short WARNING 0 true|exhaust-gas WARNING 1 false|exhaust-gas WARNING 2 false|exhaust-gas WARNING 0 false"
	if strings.Join(got, "|") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, "|"), want)
	}
}
