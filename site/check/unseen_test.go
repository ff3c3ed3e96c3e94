package check_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// A tally counts dangers that are there, that are seen, that may be said, and
// that are said though they are not there.
type tally struct{ there, seen, fair, wrong int }

func (c *tally) add(o tally) {
	c.there, c.seen, c.fair, c.wrong = c.there+o.there, c.seen+o.seen, c.fair+o.fair, c.wrong+o.wrong
}

func (c tally) recall() float64 { return float64(c.seen) / float64(max(c.there, 1)) }

func (c tally) precision() float64 {
	return float64(c.seen+c.fair) / float64(max(c.seen+c.fair+c.wrong, 1))
}

func (c tally) String() string {
	return fmt.Sprintf("recall %5.3f (%d of %d), precision %5.3f (%d wrong)", c.recall(), c.seen, c.there, c.precision(), c.wrong)
}

// A measured is what a set of sentences gave.
type measured struct {
	all, injury, property tally
	byHazard              map[string]*tally
	sentences, resolved   int
	// harmless sentences and those that were told of a danger all the same.
	harmless, disturbed int
}

// TestUnseen measures how many dangers the matrix sees in sentences of writers
// who have not seen it, as other people declared them and a third group
// labeled what is true. Lines are sentence, declaration (several set apart by
// semicolons), hazard ids or -, trade and region, parted by tabs. A ? before an
// id marks a hazard that a careful workshop may want to read of there: saying it
// is right, leaving it out no miss. The files of unseen/ are counted only:
// nobody who changes the matrix reads them.
func TestUnseen(t *testing.T) {
	book, _, err := sheet.Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	for _, set := range []struct {
		name, files string
		goals       bool
	}{{"seen", "../../testdata/hazards/seen*.tsv", false}, {"unseen", "../../testdata/hazards/unseen/*.tsv", true}} {
		names, err := filepath.Glob(set.files)
		if err != nil {
			t.Fatal(err)
		}
		t.Run(set.name, func(t *testing.T) {
			if len(names) == 0 {
				t.Skip("no such sentences are there")
			}
			declared, plain := measure(t, book, names)
			report(t, "declared", declared)
			report(t, "plain words alone", plain)
			t.Logf("plain words resolve %d of %d sentences", plain.resolved, plain.sentences)
			for _, id := range hazardIDs(declared) {
				t.Logf("  %-36s %v", id, declared.byHazard[id])
			}
			if set.goals {
				goals(t, declared)
			}
		})
	}
}

// goals are those of the design: recall, precision and quiet on what nobody
// has read.
func goals(t *testing.T, m *measured) {
	if m.injury.recall() < 0.97 || m.all.recall() < 0.95 {
		t.Errorf("recall is under its goals of 0.97 for injury and 0.95 for all: %v; %v", m.injury, m.all)
	}
	if m.all.precision() < 0.90 {
		t.Errorf("precision is under its goal of 0.90: %v", m.all)
	}
	if m.disturbed*100 > m.harmless {
		t.Errorf("%d of %d harmless sentences are disturbed, the goal is 1 in 100", m.disturbed, m.harmless)
	}
}

// measure counts the sentences of some files, by their declarations and by
// their plain words alone.
func measure(t *testing.T, book *sheet.Book, names []string) (declared, plain *measured) {
	words, _ := work.NewWords(book.Work.Lists, &english.Stems{})
	declared, plain = &measured{byHazard: map[string]*tally{}}, &measured{byHazard: map[string]*tally{}}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
			part := strings.Split(line, "\t")
			if len(part) < 3 {
				t.Fatalf("line %d of a file has %d parts", i+1, len(part))
			}
			does, faults := book.Work.ParseAll(part[1])
			if len(faults) > 0 {
				t.Errorf("line %d: a declaration is at fault: %s", i+1, faults[0].Message)
			}
			var truth []string
			if part[2] != "-" && part[2] != "" {
				truth = strings.Split(strings.ReplaceAll(part[2], " ", ""), ",")
			}
			declared.count(book, does, truth)
			step := work.Resolve(words.Read(part[0]), nil)
			if step.Doubt == nil && !step.None {
				plain.resolved++
			}
			plain.count(book, step.Does, truth)
		}
	}
	return declared, plain
}

// count adds one sentence.
func (m *measured) count(book *sheet.Book, does []work.Declaration, truth []string) {
	m.sentences++
	var said []string
	for _, c := range check.CausesOf(book, does, nil) {
		said = append(said, c.Hazard.ID)
	}
	if len(truth) == 0 {
		m.harmless++
		if len(said) > 0 {
			m.disturbed++
		}
	}
	for _, h := range book.Register.Hazards {
		is, says := slices.Contains(truth, h.ID), slices.Contains(said, h.ID)
		var one tally
		switch {
		case is && says:
			one = tally{there: 1, seen: 1}
		case is:
			one = tally{there: 1}
		case says && slices.Contains(truth, "?"+h.ID):
			one = tally{fair: 1}
		case says:
			one = tally{wrong: 1}
		default:
			continue
		}
		m.all.add(one)
		if h.Injury {
			m.injury.add(one)
		} else {
			m.property.add(one)
		}
		if m.byHazard[h.ID] == nil {
			m.byHazard[h.ID] = &tally{}
		}
		m.byHazard[h.ID].add(one)
	}
}

func report(t *testing.T, how string, m *measured) {
	t.Logf("%s: injury %v", how, m.injury)
	t.Logf("%s: things %v", how, m.property)
	t.Logf("%s: all %v; %d of %d harmless sentences disturbed", how, m.all, m.disturbed, m.harmless)
}

func hazardIDs(m *measured) []string {
	var ids []string
	for id := range m.byHazard {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	return ids
}

// TestMatrix compares work that nobody would argue about with the shipped
// matrix: trade practice, and ISO 45001's order of step, hazard, control as in
// OSHA 3071 (from memory).
func TestMatrix(t *testing.T) {
	book, _, err := sheet.Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		does  string
		wants []string
		not   []string
	}{
		{"drill?at=floor&with=step-bit", []string{"blind-drilling", "drill-ejecta", "fuel-line-or-tank", "corrosion-bare-metal"}, []string{"curtain-bag-path"}},
		{"undo?at=battery-negative", []string{"battery-short", "memory-loss-on-disconnect"}, []string{"blind-drilling"}},
		{"pry?at=pillar", []string{"curtain-bag-path", "trim-clip-eye"}, nil},
		{"drill?at=enclosure&state=bench", []string{"drill-ejecta"}, []string{"blind-drilling", "corrosion-bare-metal"}},
		{"beneath?at=vehicle&state=raised", []string{"under-raised-vehicle"}, nil},
		{"start?at=vehicle&state=doors-closed", []string{"engine-running-indoors"}, nil},
		{"drill?at=floor&state=hv-vehicle", []string{"traction-high-voltage"}, nil},
		{"drill?at=floor&clear=fuel-part", []string{"blind-drilling"}, []string{"fuel-line-or-tank"}},
		{"note", nil, []string{"battery-short"}},
		{"inspect?at=headliner", nil, []string{"curtain-bag-path"}},
	} {
		does, faults := book.Work.ParseAll(c.does)
		if len(faults) > 0 {
			t.Errorf("%s: %v", c.does, faults)
		}
		var said []string
		for _, cause := range check.CausesOf(book, does, nil) {
			said = append(said, cause.Hazard.ID)
		}
		for _, want := range c.wants {
			if !slices.Contains(said, want) {
				t.Errorf("%s does not show %s, only %v", c.does, want, said)
			}
		}
		for _, not := range c.not {
			if slices.Contains(said, not) {
				t.Errorf("%s shows %s", c.does, not)
			}
		}
	}
}
