package finding

import (
	"bytes"
	"strings"
	"sync"
	"testing"
)

func TestPositionString(t *testing.T) {
	for _, tt := range []struct {
		pos  Position
		want string
	}{
		{Position{File: "a.md", Offset: 9, Line: 2, Column: 3}, "a.md:2:3"},
		{Position{File: "a.md", Line: 2}, "a.md:2"},
		{Position{File: "a.md"}, "a.md"},
		{Position{File: "a.md", Column: 3}, "a.md"}, // a column of no line says nothing
		{Position{Line: 2, Column: 3}, "2:3"},
		{Position{}, ""},
	} {
		if got := tt.pos.String(); got != tt.want {
			t.Errorf("%+v: %q, want %q", tt.pos, got, tt.want)
		}
	}
}

func TestSourcePosition(t *testing.T) {
	src := NewSource("a.md", []byte("ab\r\n\nµ5\nlast"))
	for _, tt := range []struct{ offset, line, column, at int }{
		{0, 1, 1, 0}, {1, 1, 2, 1}, {3, 1, 4, 3}, {4, 2, 1, 4}, {5, 3, 1, 5},
		{7, 3, 3, 7}, // after a letter of two bytes: the column counts bytes
		{9, 4, 1, 9}, {13, 4, 5, 13}, {99, 4, 5, 13}, {-1, 1, 1, 0},
	} {
		got := src.Position(tt.offset)
		want := Position{"a.md", tt.at, tt.line, tt.column}
		if got != want {
			t.Errorf("Position(%d) = %+v, want %+v", tt.offset, got, want)
		}
	}
	for line, want := range []string{"", "ab", "", "µ5", "last", ""} {
		if got := src.LineText(line); got != want {
			t.Errorf("LineText(%d) = %q, want %q", line, got, want)
		}
	}
	if src.File() != "a.md" || string(src.Text()) != "ab\r\n\nµ5\nlast" {
		t.Errorf("file %q, text %q", src.File(), src.Text())
	}
}

func TestEmptySource(t *testing.T) {
	src := NewSource("empty.md", nil)
	if got := src.Position(0); got.Line != 1 || got.Column != 1 || src.LineText(1) != "" {
		t.Errorf("Position(0) = %+v", got)
	}
}

func TestAt(t *testing.T) {
	src := NewSource("a.md", []byte("one\ndrop 0.43 V\n"))
	f := src.At(9, 15)
	if f.Found != "0.43 V" || f.Length != 6 || f.Line != "drop 0.43 V" || f.Pos.String() != "a.md:2:6" {
		t.Errorf("At(9, 15) = %+v", f)
	}
	if f := src.At(12, 5); f.Length != 0 || f.Found != "" {
		t.Errorf("At with its ends swapped = %+v", f)
	}
	if f := src.At(10, 1000); f.Found != ".43 V\n" {
		t.Errorf("At beyond the text = %+v", f)
	}
}

// TestSourceConcurrently has its worth under the race detector; without it, it
// still checks that every goroutine sees the whole line table.
func TestSourceConcurrently(t *testing.T) {
	src := NewSource("a.md", bytes.Repeat([]byte("line\n"), 1000))
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			if got := src.Position(4999).Line; got != 1000 {
				t.Errorf("line %d, want 1000", got)
			}
		})
	}
	wg.Wait()
}

// FuzzSource checks every position against counting line ends in the text.
func FuzzSource(f *testing.F) {
	f.Add("ab\r\n\ncd", 3)
	f.Add("", 0)
	f.Fuzz(func(t *testing.T, text string, offset int) {
		src := NewSource("f", []byte(text))
		pos := src.Position(offset)
		at := min(max(offset, 0), len(text))
		before := text[:at]
		if pos.Line != strings.Count(before, "\n")+1 || pos.Column != at-(strings.LastIndexByte(before, '\n')+1)+1 {
			t.Fatalf("Position(%d) = %+v in %q", offset, pos, text)
		}
		if got, want := src.LineText(pos.Line), strings.Split(text, "\n")[pos.Line-1]; got != strings.TrimSuffix(want, "\r") {
			t.Fatalf("LineText(%d) = %q, want %q", pos.Line, got, want)
		}
	})
}
