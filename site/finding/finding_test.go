package finding

import (
	"errors"
	"math/rand"
	"slices"
	"strings"
	"testing"
)

func sample() List {
	return List{
		{Rule: "b-rule", Pos: Position{File: "b.md", Offset: 3, Line: 1, Column: 4}, Message: "two"},
		{Rule: "a-rule", Pos: Position{File: "b.md", Offset: 3, Line: 1, Column: 4}, Message: "two"},
		{Rule: "a-rule", Pos: Position{File: "b.md", Offset: 3, Line: 1, Column: 4}, Message: "one", Severity: Warning},
		{Rule: "z-rule", Pos: Position{File: "a.md", Offset: 90, Line: 9, Column: 1}, Message: "last of a"},
		{Rule: "z-rule", Pos: Position{File: "a.md", Offset: 7, Line: 2, Column: 1}, Message: "first of all"},
		{Rule: "book", Message: "of no file"},
	}
}

func TestSortIsTheSameWhateverRanFirst(t *testing.T) {
	want := []string{"of no file", "first of all", "last of a", "one", "two", "two"}
	for seed := range int64(50) {
		l := sample()
		rand.New(rand.NewSource(seed)).Shuffle(len(l), func(i, j int) { l[i], l[j] = l[j], l[i] })
		l.Sort()
		var got []string
		for _, f := range l {
			got = append(got, f.Message)
		}
		if !slices.Equal(got, want) || l[4].Rule != "a-rule" || l[5].Rule != "b-rule" {
			t.Fatalf("seed %d: order %q", seed, got)
		}
	}
}

func TestDedupe(t *testing.T) {
	l := append(sample(), sample()...)
	l = append(l, l[0])
	l[len(l)-1].Length = 5 // other words at the same place are another finding
	got := l.Dedupe()
	if len(got) != len(sample())+1 {
		t.Errorf("%d findings left, want %d", len(got), len(sample())+1)
	}
}

func TestErrorsAndErr(t *testing.T) {
	l := sample()
	if n := l.Errors(); n != 5 {
		t.Errorf("Errors() = %d, want 5", n)
	}
	err := l.Dedupe().Err()
	if err == nil || err.Error() != "of no file (and 4 more errors)" {
		t.Errorf("Err() = %v", err)
	}
	var le *ListError
	if !errors.As(err, &le) || len(le.List) != len(l) {
		t.Errorf("the error does not carry the list")
	}
	if err := (List{l[1]}).Err(); err.Error() != "a.md:2:1: first of all" {
		t.Errorf("Err() = %v", err)
	}
	if err := (List{{Severity: Warning}}).Err(); err != nil {
		t.Errorf("a warning alone stops publishing: %v", err)
	}
	if err := List(nil).Err(); err != nil {
		t.Errorf("an empty list is an error: %v", err)
	}
}

func TestSeverity(t *testing.T) {
	var zero Severity
	if zero != Error || Error.String() != "error" || Warning.String() != "warning" {
		t.Errorf("zero severity is %v", zero)
	}
}

var applyTests = []struct {
	name, src string
	fixes     []Fix
	want      string // "" with err set
	err       string
}{
	{"nothing", "0.43 V", nil, "0.43 V", ""},
	{"replace", "drop 0.43 V.\r\n", []Fix{{Edits: []Edit{{5, 9, "0.41"}}}}, "drop 0.41 V.\r\n", ""},
	{"two fixes, out of order", "a b c", []Fix{{Edits: []Edit{{4, 5, "z"}}}, {Edits: []Edit{{0, 1, "xx"}}}}, "xx b z", ""},
	{"touching", "abcd", []Fix{{Edits: []Edit{{0, 2, "x"}, {2, 4, "y"}}}}, "xy", ""},
	{"insert at an edit's start", "abcd", []Fix{{Edits: []Edit{{2, 4, "y"}, {2, 2, "x"}}}}, "abxy", ""},
	{"insert at the end", "ab", []Fix{{Edits: []Edit{{2, 2, "c"}}}}, "abc", ""},
	{"delete", "abc", []Fix{{Edits: []Edit{{1, 2, ""}}}}, "ac", ""},
	{"the same edit twice", "abc", []Fix{{Edits: []Edit{{1, 2, "x"}}}, {Edits: []Edit{{1, 2, "x"}}}}, "axc", ""},
	{"bytes that are no text", "\xff\x00é\xfe", []Fix{{Edits: []Edit{{1, 2, "0"}}}}, "\xff0é\xfe", ""},
	{"overlap", "abcd", []Fix{{Edits: []Edit{{0, 3, "x"}}}, {Edits: []Edit{{2, 4, "y"}}}}, "", "overlap"},
	{"one inside the other", "abcd", []Fix{{Edits: []Edit{{0, 4, "x"}, {1, 2, "y"}}}}, "", "overlap"},
	{"two answers for one place", "abcd", []Fix{{Edits: []Edit{{1, 2, "x"}}}, {Edits: []Edit{{1, 2, "y"}}}}, "", "overlap"},
	{"two insertions at one place", "abcd", []Fix{{Edits: []Edit{{1, 1, "x"}, {1, 1, "y"}}}}, "", "overlap"},
	{"beyond the end", "abcd", []Fix{{Edits: []Edit{{3, 5, "x"}}}}, "", "does not lie"},
	{"backwards", "abcd", []Fix{{Edits: []Edit{{3, 1, "x"}}}}, "", "does not lie"},
	{"before the start", "abcd", []Fix{{Edits: []Edit{{-1, 1, "x"}}}}, "", "does not lie"},
}

func TestApply(t *testing.T) {
	for _, tt := range applyTests {
		src := []byte(tt.src)
		got, err := Apply(src, tt.fixes)
		if string(src) != tt.src {
			t.Errorf("%s: the source was changed to %q", tt.name, src)
		}
		if tt.err != "" {
			if err == nil || !strings.Contains(err.Error(), tt.err) {
				t.Errorf("%s: error %v, want one with %q", tt.name, err, tt.err)
			}
			continue
		}
		if err != nil || string(got) != tt.want {
			t.Errorf("%s: %q, %v, want %q", tt.name, got, err, tt.want)
		}
	}
}

// FuzzApply checks a fix of one edit against the plain meaning of replacing.
func FuzzApply(f *testing.F) {
	f.Add("drop 0.43 V", 5, 9, "0.41")
	f.Add("", 0, 0, "x")
	f.Add("a", 2, 1, "")
	f.Fuzz(func(t *testing.T, src string, start, end int, text string) {
		got, err := Apply([]byte(src), []Fix{{Edits: []Edit{{start, end, text}}}})
		inside := 0 <= start && start <= end && end <= len(src)
		if inside != (err == nil) {
			t.Fatalf("edit %d to %d of %d bytes: error %v", start, end, len(src), err)
		}
		if inside && string(got) != src[:start]+text+src[end:] {
			t.Fatalf("got %q", got)
		}
	})
}

func TestFixes(t *testing.T) {
	l := List{
		{Pos: Position{File: "a.md"}, Fix: &Fix{Message: "one"}},
		{Pos: Position{File: "a.md"}},
		{Pos: Position{File: "b.md"}, Fix: &Fix{Message: "other file"}},
		{Pos: Position{File: "a.md"}, Fix: &Fix{Message: "two"}},
	}
	got := l.Fixes("a.md")
	if len(got) != 2 || got[0].Message != "one" || got[1].Message != "two" {
		t.Errorf("Fixes = %+v", got)
	}
}
