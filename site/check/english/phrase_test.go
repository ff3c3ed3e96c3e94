package english

import (
	"strings"
	"testing"
)

// found reports whether a phrase is in a text, in a mode.
func found(t *testing.T, phrase, text string, mode Mode) bool {
	t.Helper()
	stems := &Stems{}
	p, msg := Parse(phrase, stems)
	if msg != "" {
		t.Fatal(msg)
	}
	read := Read(text, stems)
	for _, s := range read.Sentences {
		if len(NewSet([]Pattern{p}).Find(read, s, mode)) > 0 {
			return true
		}
	}
	return false
}

var shownTests = []struct {
	phrase, text string
	want         bool
}{
	// Doing and not doing.
	{"to drill", "Drill the hole.", true},
	{"to drill", "Before drilling, look behind.", true},
	{"to drill", "The hole is drilled from inside.", true},
	{"to drill", "Mark the spot, then drill it.", true},
	{"to drill", "Mark, drill and deburr.", true},
	{"to drill", "If you cannot reach it, drill a hole.", true},
	{"to drill", "Never drill without a depth stop.", true},
	{"to drill", "Do not drill until the far side is seen.", true},
	{"to drill", "Do not drill.", false},
	{"to drill", "Do not cut, drill or clamp there.", false},
	{"to drill", "Use the hole without drilling.", false},
	{"to drill", "Drill nothing near the tank.", false},
	{"to drill", "You need not drill here.", false},
	{"to drill", "Put the drill down.", false},
	{"to drill", "The drill is in the case.", false},
	{"to drill", "Take the step bit, drill and oil.", false},
	{"to drill", "Drill bits lie in the case.", false},
	// Things that are there and things that are not.
	{"airbag", "Do not touch the airbag.", true},
	{"airbag", "There is no airbag.", false},
	{"airbag", "A door without an airbag.", false},
	// Words in a row.
	{"pillar trim/cover", "Take off the pillar's cover.", true},
	{"pillar trim", "Trim the pillar.", false},
	{"ground lug", "Ground the lug.", true}, // articles may stand between
	{"self tapping screw", "Drive two self-tapping screws.", true},
	{"hot air", "It is hot, air the van.", false},
	// Parts.
	{"to lift + seat", "Lift out the front seat.", true},
	{"to lift + seat", "Lift the lid. The seat stays.", false},
	// Exact words.
	{"=CAN", "The CAN wires.", true},
	{"=CAN", "You can see it.", false},
	// Numbers.
	{"wait + <s/min>", "Wait 10 min here.", true},
	{"wait + <minutes>", "Wait ten minutes here.", true},
	{"wait + <hour>", "Wait half an hour here.", true},
	{"wait + <min>", "Wait for 10 V.", false},
}

func TestShown(t *testing.T) {
	for _, tt := range shownTests {
		if got := found(t, tt.phrase, tt.text, Shown); got != tt.want {
			t.Errorf("%q in %q: %t", tt.phrase, tt.text, got)
		}
	}
}

func TestSaidTakesWordsAsTheyStand(t *testing.T) {
	for text, want := range map[string]bool{"No test lamp there.": true, "Use the lamp.": false} {
		if got := found(t, "test lamp", text, Said); got != want {
			t.Errorf("%q: %t", text, got)
		}
	}
}

func TestSentences(t *testing.T) {
	text := Read("Set it to 3.5 mm. Use e.g. tape: it holds (for now). Stop! Why?\nEnd", &Stems{})
	var got []string
	for _, s := range text.Sentences {
		got = append(got, text.String(s))
	}
	want := "Set it to 3.5 mm|Use e.g. tape: it holds (for now|Stop|Why|End"
	if strings.Join(got, "|") != want {
		t.Errorf("got  %s\nwant %s", strings.Join(got, "|"), want)
	}
}

func TestBadPhrases(t *testing.T) {
	for _, phrase := range [...]string{"a +  + b", "x + ", "<A", "=", "self-tapping", "to <A>", "the"} {
		if _, msg := Parse(phrase, &Stems{}); msg == "" {
			t.Errorf("%q is read without complaint", phrase)
		}
	}
}

// FuzzRead checks that every word is where it says, in order, and that each
// belongs to one sentence.
func FuzzRead(f *testing.F) {
	for _, tt := range shownTests {
		f.Add(tt.text)
	}
	f.Fuzz(func(t *testing.T, source string) {
		text := Read(source, &Stems{})
		at := 0
		for _, w := range text.Words {
			if w.Start < at || w.End <= w.Start || source[w.Start:w.End] != w.Text {
				t.Fatalf("the word %q is not at %d to %d", w.Text, w.Start, w.End)
			}
			at = w.End
		}
		next := 0
		for _, s := range text.Sentences {
			if s.First != next || s.Last <= s.First {
				t.Fatalf("sentence %v after word %d", s, next)
			}
			next = s.Last
		}
		if next != len(text.Words) {
			t.Fatalf("%d words in sentences of %d", next, len(text.Words))
		}
	})
}

// FuzzParse checks that reading a phrase never fails otherwise than with a
// message, and that what it reads can be looked for.
func FuzzParse(f *testing.F) {
	for _, tt := range shownTests {
		f.Add(tt.phrase, tt.text)
	}
	f.Fuzz(func(t *testing.T, phrase, source string) {
		stems := &Stems{}
		p, msg := Parse(phrase, stems)
		if msg != "" {
			return
		}
		text := Read(source, stems)
		for _, s := range text.Sentences {
			NewSet([]Pattern{p}).Find(text, s, Shown)
			NewSet([]Pattern{p}).Find(text, s, Said)
		}
	})
}
