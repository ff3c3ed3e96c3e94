package rule

import (
	"baybook/site/check"
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"baybook/calculators"
	"baybook/site/finding"
	"baybook/site/sheet"
)

// A seed is one deliberate fault: an edit of the first shipped sheet that it
// fits, and the rule that must find it there.
type seed struct {
	name, rule string
	// says is in the finding's message, where the rule alone is not enough.
	says string
	// edit changes a sheet's text; nil where the sheet does not fit.
	edit func(s *sheet.Sheet, r *sheet.Register) []byte
}

// replaced is the sheet's text with a stretch of it written otherwise.
func replaced(s *sheet.Sheet, at sheet.Span, with string) []byte {
	text := s.Source.Text()
	return slicesConcat(text[:at.Start], []byte(with), text[at.End:])
}

func slicesConcat(parts ...[]byte) []byte { return bytes.Join(parts, nil) }

// swapText writes one text for another, once.
func swapText(old, with string) func(*sheet.Sheet, *sheet.Register) []byte {
	return func(s *sheet.Sheet, _ *sheet.Register) []byte {
		if at := bytes.Index(s.Source.Text(), []byte(old)); at >= 0 {
			return replaced(s, sheet.Span{Start: at, End: at + len(old)}, with)
		}
		return nil
	}
}

// swapPattern writes another text for the first match.
func swapPattern(pattern, with string) func(*sheet.Sheet, *sheet.Register) []byte {
	re := regexp.MustCompile(pattern)
	return func(s *sheet.Sheet, _ *sheet.Register) []byte {
		text := s.Source.Text()
		m := re.FindSubmatchIndex(text)
		if m == nil {
			return nil
		}
		return replaced(s, sheet.Span{Start: m[0], End: m[1]}, string(re.Expand(nil, []byte(with), text, m)))
	}
}

// inMessage edits the first message that names a hazard of the given title,
// or any message where the title is empty.
func inMessage(title string, edit func(s *sheet.Sheet, m *sheet.Message, t sheet.Title) []byte) func(*sheet.Sheet, *sheet.Register) []byte {
	return func(s *sheet.Sheet, _ *sheet.Register) []byte {
		for _, m := range s.Messages {
			for _, t := range m.Titles {
				if title == "" || strings.EqualFold(t.Text, title) {
					if out := edit(s, m, t); out != nil {
						return out
					}
				}
			}
		}
		return nil
	}
}

// newBody writes another text into the only message of a sheet that names a
// hazard.
func newBody(title, text string) func(*sheet.Sheet, *sheet.Register) []byte {
	return inMessage(title, func(s *sheet.Sheet, m *sheet.Message, _ sheet.Title) []byte {
		source := s.Source.Text()
		start := m.Span.End + len("**")
		end := start + bytes.IndexByte(source[start:], '\n') + 1
		for end < len(source) && bytes.HasPrefix(bytes.TrimLeft(source[end:], " "), []byte(">")) {
			end += bytes.IndexByte(source[end:], '\n') + 1
		}
		if bytes.Count(bytes.ToLower(source), bytes.ToLower([]byte(title+"."))) > 1 || len(m.Titles) > 1 {
			return nil
		}
		return replaced(s, sheet.Span{Start: start, End: end}, " "+text+"\n")
	})
}

// unwarned takes a hazard's title out of every message of a procedure whose
// own steps show it, by writing another title over it.
func unwarned(title string) func(*sheet.Sheet, *sheet.Register) []byte {
	return func(s *sheet.Sheet, r *sheet.Register) []byte {
		h := r.Titled(title)
		if s.Front.Kind != sheet.Procedure || h == nil || len(s.Front.Waivers) > 0 {
			return nil
		}
		other := "Compressed air"
		if !h.Injury {
			other = "Blocked airflow"
		}
		text, shift, found := s.Source.Text(), 0, false
		for _, m := range s.Messages {
			for _, t := range m.Titles {
				if strings.EqualFold(t.Text, title) {
					text = slicesConcat(text[:t.Span.Start+shift], []byte(other), text[t.Span.End+shift:])
					shift += len(other) - len(t.Text)
					found = true
				}
			}
		}
		if !found {
			return nil
		}
		return text
	}
}

// word writes another signal word over a message of a given one.
func word(from, to sheet.Word, alone bool) func(*sheet.Sheet, *sheet.Register) []byte {
	return inMessage("", func(s *sheet.Sheet, m *sheet.Message, _ sheet.Title) []byte {
		if m.Word != from || alone && len(m.Titles) != 1 {
			return nil
		}
		return replaced(s, m.WordSpan, to.String())
	})
}

// digits spoils the nth computed number of a calculator's that has digits.
func digits(calculator string) func(*sheet.Sheet, *sheet.Register) []byte {
	return func(s *sheet.Sheet, _ *sheet.Register) []byte {
		for _, v := range s.Values {
			if v.Calculator.Name != calculator {
				continue
			}
			text := s.Source.Text()
			for i := v.Span.Start; i < v.Span.End; i++ {
				if c := text[i]; c >= '1' && c <= '8' {
					return replaced(s, sheet.Span{Start: i, End: i + 1}, string(c+1))
				}
			}
		}
		return nil
	}
}

// firstStep writes another text over the own sentence of the first step.
func firstStep(text string) func(*sheet.Sheet, *sheet.Register) []byte {
	return func(s *sheet.Sheet, _ *sheet.Register) []byte {
		if len(s.Steps) == 0 {
			return nil
		}
		at := s.Steps[0].Span
		return replaced(s, sheet.Span{Start: at.Start, End: at.Start}, text+" ")
	}
}

var seeds = []seed{
	{"no message on drilling", "hazard-unguarded", "Drilling blind", unwarned("Drilling blind")},
	{"no message on exhaust gas", "hazard-unguarded", "Exhaust gas", unwarned("Exhaust gas")},
	{"no message on the battery", "hazard-unguarded", "Battery short circuit", unwarned("Battery short circuit")},
	{"no message on adhesive", "hazard-unguarded", "Adhesive on the skin", unwarned("Adhesive on the skin")},
	{"CAUTION for WARNING", "weak-word", "needs at least WARNING", word(sheet.Warning, sheet.Caution, true)},
	{"WARNING for DANGER", "weak-word", "needs at least DANGER", word(sheet.Danger, sheet.Warning, false)},
	{"NOTICE for an injury", "notice-for-injury", "", word(sheet.Warning, sheet.Notice, false)},
	{"CAUTION for damage", "injury-word-for-property", "", word(sheet.Notice, sheet.Caution, false)},
	{"damage in a warning", "injury-and-property-mixed", "", inMessage("Exhaust gas", func(s *sheet.Sheet, _ *sheet.Message, t sheet.Title) []byte {
		return replaced(s, t.Span, t.Text+". Scratched paint")
	})},
	{"message without consequence", "message-content", "may happen", newBody("Distracted road test", "Let one person drive.")},
	{"waiting time for an airbag", "must-not-say", "", firstStep("Wait 10 minutes before you touch the airbag.")},
	{"waiting time in a proof", "must-not-say", "", swapText("## Prove it\n", "## Prove it\n\n- The pretensioner is safe after a wait of half an hour.\n")},
	{"misspelt title", "title-unknown", "", inMessage("", func(s *sheet.Sheet, _ *sheet.Message, t sheet.Title) []byte {
		return replaced(s, t.Span, t.Text+"s of it")
	})},
	{"steps in a message", "steps-in-message", "", swapPattern(`\n(> \*\*WARNING: [^*]+\*\*[^\n]*\n(?:>[^\n]*\n)*)`, "\n$1>\n> 1. Do this.\n> 2. Do that.\n")},
	{"wrong drop", "computed-number", "", digits("wire-drop")},
	{"wrong fuse", "computed-number", "", digits("fuse-size")},
	{"wrong hole", "computed-number", "", digits("pass-hole")},
	{"wrong slack", "computed-number", "", digits("hinge-slack")},
	{"wrong torque", "computed-number", "", digits("bolt-torque")},
	{"too much for the wire", "stop-verdict", "", swapPattern(`(\(calc:fuse-size\?load=)[0-9.]+A`, "${1}38A")},
	{"reading judged by another limit", "reading-words", "", swapPattern(`\?max=(\d+)mV\)`, "?max=${1}1mV)")},
	{"reading turned round", "reading-words", "", swapText("[at least ", "[at most ")},
	{"fuse typed otherwise", "repeated-number", "fuse", firstStepWith("#fuse)", "Lay out the 35 A fuse.")},
	{"number from nowhere", "typed-number", "137 mm", firstStep("Keep 137 mm free.")},
	{"wrong inches", "conversion", "", swapPattern(`(\d+ mm) \(\d+ in\)`, "$1 (77 in)")},
	{"broken link", "link", "no sheet", swapPattern(`\]\(([a-z/.-]+)\.md`, "](${1}x.md")},
	{"link out of the folder", "link", "out of the content folder", swapPattern(`\]\([a-z/.-]+\.md`, "](../../../secret.md")},
	{"broken anchor", "anchor", "no place", swapPattern(`\.md#prove-it`, ".md#prove-that")},
	{"space in an address", "link-form", "", swapPattern(`\((calc:wire-drop\?current=\d+)(\.\d+)?A`, "($1$2 A")},
	{"link that runs", "external-link", "", firstStep("Read [this](javascript:alert(1)).")},
	{"sheet number that is none", "sheet-number", "", firstStep("See GR-99.")},
	{"step that is none", "step-number", "", firstStep("See step 99.")},
	{"lost figure", "figure", "no file", swapPattern(`\]\(([a-z-]+)\.svg`, "](${1}-lost.svg")},
	{"mute figure", "figure", "alternative text", swapPattern(`!\[[^\]]+\]`, "![]")},
	{"no proof", "section-missing", "Prove it", swapText("## Prove it\n", "## Proof\n")},
	{"no sources", "section-missing", "Sources", swapText("## Sources\n", "## From\n")},
	{"sections out of order", "section-order", "", swapText("## Steps\n", "## Sources\n\n- None.\n\n## Steps\n")},
	{"no revision", "front-matter", "revision", swapPattern(`\nrevision: [A-Z]+`, "")},
	{"misspelt key", "front-matter", "not known", swapText("\nminutes:", "\nminuets:")},
	{"a fuse with two values", "numbers-disagree", "", swapPattern(`(?m)^(materials: .*, )30 A fuse`, "${1}25 A fuse")},
	{"date in the future", "date-future", "", swapPattern(`\ndate: \d{4}`, "\ndate: 2999")},
	{"old approval", "approval-old", "", swapPattern(`\nkind:`, "\napproved: {by: Lead, date: 2020-01-01}\nkind:")},
	{"waiver of nothing", "waiver", "nothing to waive", swapPattern(`\nkind:`, "\nwaive: [{hazard: air-suspension-drop, reason: nobody ever does it here, by: lead}]\nkind:")},
	{"waiver of an unknown rule", "waiver", "no rule", swapPattern(`\nkind:`, "\nwaive: [{rule: weak-words, reason: nobody ever does it here, by: lead}]\nkind:")},
	{"unknown hazard", "hazard-unknown", "", swapPattern(`\nkind:`, "\nhazards: [air-suspension-drops]\nkind:")},
	{"statement for a step", "imperative-first", "", firstStep("The lamp is switched on.")},
	{"two actions", "one-action", "", firstStep("Look at the lamp, then switch the light off.")},
	{"condition behind", "condition-first", "", firstStep("Switch the lamp off if it is dark.")},
	{"should", "no-should", "", firstStep("The lamp should light.")},
	{"vague amount", "vague-word", "", firstStep("Wipe the lens as required.")},
	{"and/or", "and-or", "", firstStep("Wipe the lens and/or the glass.")},
	{"long sentence", "long-sentence", "", firstStep("Look at " + strings.Repeat("the lamp and ", 12) + "the key.")},
	{"number without unit", "number-without-unit", "", firstStep("Set the stop to 3.")},
	{"other name", "term-preferred", "bulkhead", firstStep("Look at the firewall.")},
	{"raw HTML", "raw-html", "", firstStep("Look at the <b>lamp</b>.")},
	{"unknown calculator", "calc-link", "", swapText("(calc:", "(calc:x")},
	{"unknown signal word", "signal-word", "", swapText("**WARNING:", "**ATTENTION:")},
	{"hidden character", "hidden-character", "", firstStep("Look at the l\u200bamp.")},
}

// firstStepWith is firstStep for a sheet that holds a text.
func firstStepWith(holds, text string) func(*sheet.Sheet, *sheet.Register) []byte {
	edit := firstStep(text)
	return func(s *sheet.Sheet, r *sheet.Register) []byte {
		if !bytes.Contains(s.Source.Text(), []byte(holds)) {
			return nil
		}
		return edit(s, r)
	}
}

// TestSeededFaults makes each fault in the shipped book, one at a time, and
// demands that the rule meant for it finds it in that sheet.
func TestSeededFaults(t *testing.T) {
	shipped := os.DirFS("../../../content")
	fsys := copyFS(t, shipped)
	book, list, err := sheet.Load(fsys, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	cache := check.NewCache(All())
	history := check.History{Today: lastIssued(book)}
	before := count(append(list, check.Run(All(), book, history)...))
	for _, seed := range seeds {
		t.Run(seed.name, func(t *testing.T) {
			for _, s := range book.Sheets {
				if s.Area() == "book" {
					continue // its sheets show the format in listings, where an edit changes nothing
				}
				text := seed.edit(s, book.Register)
				if text == nil {
					continue
				}
				kept := fsys[s.File]
				fsys[s.File] = &fstest.MapFile{Data: text}
				changed, found, err := sheet.Reload(book, fsys, calculators.All)
				if err != nil {
					t.Fatal(err)
				}
				found = append(found, cache.Run(changed, history)...)
				fsys[s.File] = kept
				if caught(found, before, s.File, seed) {
					return
				}
				if seed.rule == "hazard-unguarded" || seed.rule == "hazard-late" || seed.rule == "weak-word" || seed.rule == "stop-verdict" {
					continue // the hazard may be shown elsewhere alone; try the next sheet
				}
				t.Fatalf("%s: the rule %s does not find it", s.File, seed.rule)
			}
			t.Fatal("no shipped sheet in which the rule finds it")
		})
	}
	if len(seeds) < 40 {
		t.Errorf("%d faults are seeded", len(seeds))
	}
}

// caught reports whether the seeded fault's rule has found something in the
// file that it did not find before.
func caught(found finding.List, before map[string]int, file string, s seed) bool {
	for _, f := range found {
		if f.Rule == s.rule && f.Pos.File == file && strings.Contains(f.Message, s.says) && before[key(&f)] == 0 {
			return true
		}
	}
	return false
}

func key(f *finding.Finding) string { return fmt.Sprint(f.Rule, " ", f.Pos.File, " ", f.Message) }

func count(list finding.List) map[string]int {
	counts := make(map[string]int)
	for i := range list {
		counts[key(&list[i])]++
	}
	return counts
}

// copyFS holds a folder in cache, so that one file of it can be changed.
func copyFS(t testing.TB, from fs.FS) fstest.MapFS {
	t.Helper()
	fsys := fstest.MapFS{}
	err := fs.WalkDir(from, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(path.Base(name), ".") {
			return err
		}
		content, err := fs.ReadFile(from, name)
		fsys[name] = &fstest.MapFile{Data: content}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return fsys
}

// TestShippedBook demands that the shipped book is clean.
func TestShippedBook(t *testing.T) {
	book, list, err := sheet.Load(os.DirFS("../../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	list = append(list, check.Run(All(), book, check.History{Today: lastIssued(book)})...)
	if len(list) > 0 {
		t.Error(short(list))
	}
}

// lastIssued is the day of the book's newest sheet, on which it is checked.
func lastIssued(book *sheet.Book) time.Time {
	var day time.Time
	for _, s := range book.Sheets {
		if s.Front.Date.After(day) {
			day = s.Front.Date
		}
	}
	return day
}

// TestNumberFaults spoils numbers of the shipped book, one at a time, and
// demands that the rule named for each finds it. A row whose words have left
// the book is passed over; enough of them must be there.
func TestNumberFaults(t *testing.T) {
	fsys := copyFS(t, os.DirFS("../../../content"))
	book, list, err := sheet.Load(fsys, calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := os.ReadFile("../../../testdata/number-faults.tsv")
	if err != nil {
		t.Fatal(err)
	}
	cache, history := check.NewCache(All()), check.History{Today: lastIssued(book)}
	before := count(append(list, check.Run(All(), book, history)...))
	made := 0
	for line := range strings.Lines(string(rows)) {
		fields := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if strings.HasPrefix(line, "#") || len(fields) != 4 {
			continue
		}
		rule, file, old, with := fields[0], fields[1], fields[2], fields[3]
		kept := fsys[file]
		if kept == nil || bytes.Count(kept.Data, []byte(old)) != 1 {
			continue
		}
		made++
		fsys[file] = &fstest.MapFile{Data: bytes.Replace(kept.Data, []byte(old), []byte(with), 1)}
		changed, found, err := sheet.Reload(book, fsys, calculators.All)
		if err != nil {
			t.Fatal(err)
		}
		found = append(found, cache.Run(changed, history)...)
		fsys[file] = kept
		if !caught(found, before, file, seed{rule: rule}) {
			t.Errorf("%s: %q for %q is not found by %s", file, with, old, rule)
		}
	}
	t.Logf("%d faults were made", made)
	if made < 40 {
		t.Errorf("%d rows of number-faults.tsv fit the book; draw new ones", made)
	}
}
