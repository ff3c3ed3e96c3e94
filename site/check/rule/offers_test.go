package rule

import (
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"baybook/calculators"
	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var (
	offeredDo    = regexp.MustCompile(`\[([^\]]+)\]\((do:[^)]+)\)`)
	offeredWaive = regexp.MustCompile(`waive: \[(\{[^}]+\})\]`)
)

// offering are steps of sheets that a rule finds something in and offers lines
// for; each offered line must pass all rules once it stands in the sheet.
var offering = []string{
	"1. Take the bracket.",
	"1. Set the lamp.",
	"1. Grok the label.",
	"1. Look at the lamp.\n\n   Drill the floor at the mark.",
	"1. Look at the lamp.\n\n   Charge the battery.",
}

// TestOffersPass tries each line that a rule of the work offers: put where the
// finding stands, no rule of the safety family finds what it found before, and
// none finds the line itself wrong.
func TestOffersPass(t *testing.T) {
	base := shippedFiles(t)
	sound, _, err := sheet.Load(base, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	const file = "zz/offer.md"
	cache, tried := check.NewCache(Checks), 0
	run := func(text string) finding.List {
		files := shippedFiles(t)
		files[file] = mapFile(text)
		book, list, err := sheet.Reload(sound, files, calculators.All)
		if err != nil {
			t.Fatal(err)
		}
		return slices.DeleteFunc(append(list, cache.Run(book, check.History{Today: today})...), func(f finding.Finding) bool { return f.Pos.File != file })
	}
	rules := []string{"work-unresolved", "undeclared-hazard", "work-link"}
	for _, steps := range offering {
		text, _ := exampleSheet("## Steps\n\n" + steps)
		found := false
		for _, f := range run(text) {
			if !slices.Contains(rules, f.Rule) {
				continue
			}
			found = true
			for _, after := range applied(text, f) {
				tried++
				for _, g := range run(after) {
					if g.Rule == "work-link" || g.Rule == "waiver" || g.Rule == "front-matter" || g.Rule == f.Rule && g.Message == f.Message {
						t.Errorf("%s: what %s offers (%s) gives %s: %s", steps, f.Rule, f.Do, g.Rule, g.Message)
					}
				}
			}
		}
		if !found {
			t.Errorf("no rule of the work finds anything in %q", steps)
		}
	}
	if tried < 2*len(offering)-2 { // an unknown verb gets advice and no line
		t.Errorf("only %d lines are offered for %d sheets", tried, len(offering))
	}
}

// applied are the sheets that result from each line that a finding offers.
func applied(text string, f finding.Finding) []string {
	var list []string
	for _, m := range offeredDo.FindAllStringSubmatch(f.Do, -1) {
		lines := strings.SplitAfter(text, "\n")
		for i := range lines {
			if strings.HasPrefix(lines[i], "1. ") && strings.Contains(lines[i], m[1]) && strings.Contains(strings.Join(lines[:i], ""), "## Steps") {
				lines[i] = strings.Replace(lines[i], m[1], m[0], 1)
				break
			}
		}
		list = append(list, strings.Join(lines, ""))
	}
	for _, m := range offeredWaive.FindAllStringSubmatch(f.Do, -1) {
		list = append(list, strings.Replace(text, "\ntools:", "\nwaive: ["+m[1]+"]\ntools:", 1))
	}
	return list
}

func mapFile(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
