package check

import (
	"bufio"
	"bytes"
	"cmp"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"baybook/calculators"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

// shopFacts loads the register, glossary and shop of the shipped book alone.
func shopFacts(t testing.TB) *BookFacts {
	t.Helper()
	fsys := fstest.MapFS{}
	for _, name := range [...]string{sheet.RegisterFile, sheet.GlossaryFile, sheet.WordsFile, sheet.ShopFile} {
		content, err := os.ReadFile(filepath.Join("../../content", name))
		if err != nil {
			t.Fatal(err)
		}
		fsys[name] = &fstest.MapFile{Data: content}
	}
	book, list, err := sheet.Load(fsys, calculators.All)
	if err != nil || list.Errors() > 0 {
		t.Fatal(err, list)
	}
	return newBookFacts(nil, book)
}

// shown lists the hazards that a sentence shows as the text of a step.
func shown(b *BookFacts, sentence string) map[string]string {
	f := &SheetFacts{HazardFacts: &HazardFacts{}, Sheet: &sheet.Sheet{}, Book: b}
	p := &Passage{Kind: StepText, Step: &sheet.Step{Number: 1}, First: true, Text: english.Read(sentence, b.Stems)}
	p.Prose = sheet.Prose{Text: sentence}
	f.ofPassage(p)
	ids := make(map[string]string)
	for _, present := range f.Present {
		ids[present.Hazard.ID] = present.Words
	}
	return ids
}

// TestHazardSentences compares every row of the register with sentences that
// show its hazard (+) and near misses that do not (-).
func TestHazardSentences(t *testing.T) {
	r := shopFacts(t)
	for _, h := range r.Book.Register.Hazards {
		t.Run(h.ID, func(t *testing.T) {
			content, err := os.ReadFile(filepath.Join("../../testdata/hazards", h.ID+".txt"))
			if err != nil {
				t.Fatal(err)
			}
			count := make(map[byte]int)
			for line := range strings.Lines(string(content)) {
				line = strings.TrimSpace(line)
				if line == "" || line[0] == '#' {
					continue
				}
				sentence := strings.TrimSpace(line[1:])
				words, found := shown(r, sentence)[h.ID]
				if line[0] == '+' && !found {
					t.Errorf("not seen in: %s", sentence)
				}
				if line[0] == '-' && found {
					t.Errorf("wrongly seen in “%s” of: %s", words, sentence)
				}
				count[line[0]]++
			}
			if count['+'] < 3 || count['-'] < 3 {
				t.Errorf("%d sentences show it and %d are near misses; three of each are needed", count['+'], count['-'])
			}
		})
	}
}

// A judged is one held-out sentence.
type judged struct {
	sentence string
	must     []string
	may      []string
}

func readHeld(t testing.TB, name string) []judged {
	t.Helper()
	content, err := os.ReadFile(filepath.Join("../../testdata/hazards/held", name))
	if err != nil {
		t.Fatal(err)
	}
	var list []judged
	for scan := bufio.NewScanner(bytes.NewReader(content)); scan.Scan(); {
		line := strings.TrimSpace(scan.Text())
		if line == "" || line[0] == '#' {
			continue
		}
		ids, sentence, ok := strings.Cut(line, " | ")
		if !ok {
			t.Fatalf("%s: no bar in %q", name, line)
		}
		j := judged{sentence: sentence}
		for id := range strings.FieldsSeq(ids) {
			if id, may := strings.CutPrefix(id, "?"); may {
				j.may = append(j.may, id)
			} else if id != "-" {
				j.must = append(j.must, id)
			}
		}
		list = append(list, j)
	}
	return list
}

// TestHeldSentences measures how well hazards are found in sentences that were
// written apart from the triggers. The floors are below what was measured, so
// that a broken trigger shows; the log gives the measure.
func TestHeldSentences(t *testing.T) {
	r := shopFacts(t)
	for _, name := range [...]string{"first.txt", "second.txt", "third.txt"} {
		right, wrong, missed := 0, 0, 0
		list := readHeld(t, name)
		for _, j := range list {
			for _, id := range slices.Concat(j.must, j.may) {
				if r.Book.Register.Named(id) == nil {
					t.Fatalf("%s names the hazard %s, which is not in the register", name, id)
				}
			}
			found := shown(r, j.sentence)
			for _, id := range slices.Sorted(maps.Keys(found)) {
				if slices.Contains(j.must, id) || slices.Contains(j.may, id) {
					right++
				} else {
					wrong++
					t.Logf("wrong:  %-32s “%s” in: %s", id, found[id], j.sentence)
				}
			}
			for _, id := range j.must {
				if _, ok := found[id]; !ok {
					missed++
					t.Logf("missed: %-32s in: %s", id, j.sentence)
				}
			}
		}
		precision := float64(right) / float64(max(1, right+wrong))
		needed := 0
		for _, j := range list {
			needed += len(j.must)
		}
		recall := float64(needed-missed) / float64(cmp.Or(needed, 1))
		t.Logf("%s: %d sentences, %d hazards called for; precision %.3f (%d right, %d wrong), recall %.3f (%d missed)",
			name, len(list), needed, precision, right, wrong, recall, missed)
		if precision < 0.85 || recall < 0.9 {
			t.Errorf("%s: precision %.3f and recall %.3f; at least 0.85 and 0.9 are needed", name, precision, recall)
		}
	}
}
