package rule

import (
	"baybook/site/check"
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"baybook/calculators"
	"baybook/site/finding"
	"baybook/site/sheet"

	"github.com/rogpeppe/go-internal/txtar"
)

// today is the day on which the examples are checked.
var today = time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)

// exampleRegister is a small register that the examples speak of.
const exampleRegister = `
- {id: exhaust-gas, title: Exhaust gas, word: WARNING, hurts: people, shows: {steps: [to start + engine, engine running]}, say: [{what: outdoors or extraction, any: [outdoors, extraction]}, {what: a limit of time, units: [min]}], harm: Exhaust gas kills., avoid: Run the engine outdoors for 3 min., source: invented}
- {id: battery-short, title: Battery short circuit, word: WARNING, hurts: people, shows: {steps: [battery clamp]}, source: invented}
- {id: trim-clip, title: Springing clip, word: CAUTION, hurts: people, shows: {steps: [to unclip]}, source: invented}
- {id: glass, title: Breaking glass, word: WARNING, hurts: people, shows: {steps: [to pry + glass]}, source: invented}
- {id: paint, title: Scratched paint, word: NOTICE, hurts: things, shows: {steps: [to scrape + paint]}, source: invented}
- {id: restraint, title: Airbag near the work, word: WARNING, hurts: people, shows: {steps: [to unplug + airbag]}, never: [wait + airbag + <s/min/minutes>], source: invented}
`

const exampleGlossary = `
- {term: bulkhead, not: [firewall], meaning: The sheet between engine bay and cab.}
`

const exampleShop = "name: The bay\nbook: Its book\n"

// exampleWords are those of the shipped book.
func exampleWords() []byte {
	content, err := os.ReadFile("../../../content/words.yaml")
	if err != nil {
		panic(err)
	}
	return content
}

const exampleDrawing = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10"><path d="M0 0L10 10" stroke="currentColor"/></svg>`

// exampleOther is a second sheet that the examples link to.
const exampleOther = `---
title: The other sheet
number: EX-02
revision: A
date: 2026-01-02
owner: Bench
kind: procedure
minutes: 5
skill: apprentice
tools: [key]
materials: [label]
---
Proves that [a sheet](sheet.md) has company.

## Steps

1. Look at the lamp.

   ![Two wires side by side, the left one with a fuse.](drawing.svg "With a fuse and without")

## Prove it

- The lamp lights.

## Sources

- Common practice, no source.
`

var exampleFront = []string{
	"title: A sheet", "number: EX-01", "revision: A", "date: 2026-01-02", "owner: Bench", "kind: procedure", "minutes: 5", "skill: apprentice",
	"tools: [key, safety glasses]", "materials: [label]",
}

// exampleSections are the sections of the sheet that an example changes.
var exampleSections = []string{
	"## Before you start\n\nLay out the key.",
	"## Steps\n\n1. Look at the lamp.",
	"## Prove it\n\n- The lamp lights.",
	"## Hand over\n\nTell of [the other sheet](other.md).",
	"## Check yourself\n\n1. What lights?\n   - [x] The lamp.\n   - [ ] The key.\n\n   > The lamp has a filament, the key has none.",
	"## Sources\n\n- Common practice, no source.",
}

// exampleFS is the book of the examples without their sheet.
func exampleFS() fstest.MapFS {
	return fstest.MapFS{
		"hazards.yaml": {Data: []byte(exampleRegister)}, "glossary.yaml": {Data: []byte(exampleGlossary)}, "shop.yaml": {Data: []byte(exampleShop)}, "words.yaml": {Data: exampleWords()},
		"area/other.md": {Data: []byte(exampleOther)}, "area/drawing.svg": {Data: []byte(exampleDrawing)},
	}
}

// exampleBook makes a book of an example: a whole sheet, or lines of front
// matter and sections that replace those of a plain sheet; files of the book
// stand behind lines -- name --.
func exampleBook(example string) (fstest.MapFS, check.History) {
	fsys := exampleFS()
	archive := txtar.Parse([]byte(example))
	for _, f := range archive.Files {
		if len(f.Data) == 0 {
			delete(fsys, f.Name)
			continue
		}
		fsys[f.Name] = &fstest.MapFile{Data: f.Data}
	}
	if fsys["area/lonely.md"] != nil { // a sheet is lonely in a crowd alone
		for i := range fewestSheets {
			text := strings.NewReplacer("EX-02", fmt.Sprintf("EX-%d", 20+i), "other sheet", "sheet next door").Replace(exampleOther)
			fsys[fmt.Sprintf("area/crowd%d.md", i)] = sheetFile(strings.Replace(text, "(sheet.md)", fmt.Sprintf("(crowd%d.md)", (i+1)%fewestSheets), 1))
		}
	}
	text, history := exampleSheet(string(archive.Comment))
	fsys["area/sheet.md"] = &fstest.MapFile{Data: []byte(text)}
	return fsys, history
}

var lastIssue = regexp.MustCompile(`# last issue: ([A-Z]+) (\d{4}-\d\d-\d\d)`)

// exampleSheet makes the sheet that an example describes.
func exampleSheet(example string) (string, check.History) {
	history := check.History{Today: today}
	if m := lastIssue.FindStringSubmatch(example); m != nil {
		date, _ := time.Parse(time.DateOnly, m[2])
		history.Sheets = map[string]check.Issue{"area/sheet.md": {Revision: m[1], Date: date, Changed: true, Newest: date}}
	}
	if strings.HasPrefix(example, "---\n") {
		return example, history
	}
	front, sections := exampleFront, strings.Join(exampleSections, "\n\n")
	before, rest, found := strings.Cut("\n"+example, "\n## ")
	opening := "Proves that the lamp lights."
	var added []string
	key := regexp.MustCompile(`^[a-z]+: `)
	for line := range strings.SplitSeq(strings.TrimSpace(before), "\n") {
		if key.MatchString(line) {
			added = append(added, line)
		} else if line != "" {
			opening += "\n\n" + line
		}
	}
	for _, a := range added {
		name, _, _ := strings.Cut(a, ":")
		var kept []string
		for _, f := range front {
			if !strings.HasPrefix(f, name+":") {
				kept = append(kept, f)
			}
		}
		front = append(kept, a)
	}
	if found {
		for part := range strings.SplitSeq(rest, "\n## ") {
			sections = replaceSection(sections, "## "+strings.TrimSpace(part))
		}
	}
	return "---\n" + strings.Join(front, "\n") + "\n---\n" + opening + "\n\n" + sections + "\n", history
}

// replaceSection puts a section in the place of the one with its heading.
func replaceSection(sections, with string) string {
	heading, _, _ := strings.Cut(with, "\n")
	parts := strings.Split(sections, "\n\n## ")
	for i, p := range parts {
		if i > 0 {
			p = "## " + p
		}
		if strings.HasPrefix(p, heading+"\n") {
			p = with
		}
		parts[i] = p
	}
	return strings.ReplaceAll(strings.Join(parts, "\n\n## "), "\n\n## ## ", "\n\n## ")
}

// checkFS reads and checks a book.
func checkFS(t testing.TB, fsys fstest.MapFS, history check.History) finding.List {
	t.Helper()
	book, list, err := sheet.Load(fsys, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	return append(list, check.Run(All(), book, history)...).Dedupe()
}

// TestRuleExamples runs the examples on every rule's page: the bad one gives a
// finding of the rule, the good one none of any rule.
func TestRuleExamples(t *testing.T) {
	without := map[string]bool{"file-size": true, "utf8": true, "nesting": true} // shown by hostile_test.go
	for _, r := range All() {
		t.Run(r.Name, func(t *testing.T) {
			if strings.TrimSpace(ExampleOf(r).Bad()) == "" || strings.TrimSpace(ExampleOf(r).Good()) == "" {
				if !without[r.Name] {
					t.Fatal("the rule's page lacks a bad or a good example")
				}
				return
			}
			fsys, history := exampleBook(ExampleOf(r).Bad())
			bad := checkFS(t, fsys, history)
			hit := false
			for _, f := range bad {
				hit = hit || f.Rule == r.Name && f.Severity == r.Severity && f.Message != "" && f.Do != ""
			}
			if !hit {
				t.Errorf("the bad example gives no finding of the rule, but %v\n%s", short(bad), fsys["area/sheet.md"].Data)
			}
			fsys, history = exampleBook(ExampleOf(r).Good())
			if good := checkFS(t, fsys, history); len(good) > 0 {
				t.Errorf("the good example gives %v\n%s", short(good), fsys["area/sheet.md"].Data)
			}
		})
	}
}

// short lists findings in a line each.
func short(list finding.List) string {
	var b strings.Builder
	for _, f := range list {
		fmt.Fprintf(&b, "\n\t%s: %s[%s]: %s (%s)", f.Pos, f.Severity, f.Rule, f.Message, f.Do)
	}
	return b.String()
}

// TestRulesAreWellFormed checks that every rule in the lists is complete.
func TestRulesAreWellFormed(t *testing.T) {
	seen := make(map[string]bool)
	kebab := regexp.MustCompile(`^[a-z][a-z0-9]*(-[a-z0-9]+)*$`)
	for _, r := range Checks {
		if !kebab.MatchString(r.Name) || seen[r.Name] {
			t.Errorf("the name %q is not lower-kebab, or stands twice", r.Name)
		}
		seen[r.Name] = true
		if r.Check == nil && r.CheckDrawing == nil && r.CheckBook == nil {
			t.Errorf("%s looks at no sheet, no drawing and not at the book", r.Name)
		}
		if r.Title() == "" || strings.HasSuffix(r.Title(), ".") || r.Why() == "" && len(r.Doc) > 400 {
			t.Errorf("%s has no title line, or no reason: %q", r.Name, r.Title())
		}
		if text, ok := Explain(r.Name); !ok || !strings.Contains(text, r.Title()) {
			t.Errorf("%s is not explained", r.Name)
		}
	}
	for _, r := range Loader {
		if seen[r.Name] && r.Name != "anchor" {
			t.Errorf("%s is a rule of the loader and of this package", r.Name)
		}
	}
	if _, ok := Explain("no-such-rule"); ok {
		t.Error("a rule that is not there is explained")
	}
	if got := len(Infos()); got != len(All()) {
		t.Errorf("%d rules are described, of %d", got, len(All()))
	}
}
