package finding

import (
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

var textRules = []RuleInfo{
	{Name: "calc-value", Short: "A number agrees with the formula that its link names."},
	{Name: "no-should", Short: "A step says what to do.", Severity: Warning},
	{Name: "never-broken", Short: "Not in the output."},
}

// textList is a list as a check would make it, of two files.
func textList() List {
	feed := NewSource("power/battery-feed.md", []byte(
		"## Steps\n1. You should fuse it.\n\n- At full load:\n\tdrop [0.43 V](calc:wire-drop?current=6A).\n"))
	at := func(words string) Finding {
		i := strings.Index(string(feed.Text()), words)
		return feed.At(i, i+len(words))
	}
	should := at("should")
	should.Rule, should.Severity, should.Message, should.Do = "no-should", Warning, "a step is an order", `begin with "Fuse"`
	value := at("0.43 V")
	value.Rule, value.Message, value.Do = "calc-value", "the formula gives 0.41 V here", "write 0.41 V"
	value.Notes = []Note{{Pos: feed.Position(0), Text: "the steps begin here"}, {Text: "current is 6 A"}}
	value.Fix = &Fix{Message: "write 0.41 V", Edits: []Edit{{value.Pos.Offset, value.Pos.Offset + 6, "0.41 V"}}}
	book := Finding{Rule: "registry", Message: "the hazard register is missing", Do: "add hazards.yaml", Pos: Position{File: "hazards.yaml"}}
	return List{book, should, value}
}

func TestWriteText(t *testing.T) {
	const want = `hazards.yaml: error[registry]: the hazard register is missing
  do: add hazards.yaml

power/battery-feed.md:2:8: warning[no-should]: a step is an order
   2 | 1. You should fuse it.
     |        ^^^^^^
  do: begin with "Fuse"

power/battery-feed.md:5:8: error[calc-value]: the formula gives 0.41 V here
   5 |     drop [0.43 V](calc:wire-drop?current=6A).
     |           ^^^^^^
  do: write 0.41 V
  see power/battery-feed.md:1:1: the steps begin here
  see current is 6 A

rules:
  calc-value  A number agrees with the formula that its link names.
  no-should   A step says what to do.

2 errors and 1 warning in 2 files
`
	var b strings.Builder
	if err := WriteText(&b, textList(), textRules); err != nil {
		t.Fatal(err)
	}
	if b.String() != want {
		t.Errorf("got:\n%s\nwant:\n%s", b.String(), want)
	}
}

func TestClosing(t *testing.T) {
	at := func(s Severity, file string) Finding { return Finding{Severity: s, Pos: Position{File: file}} }
	for _, tt := range []struct {
		list List
		want string
	}{
		{nil, "nothing found"},
		{List{at(Error, "a")}, "1 error in 1 file"},
		{List{at(Warning, "a"), at(Warning, "a")}, "2 warnings in 1 file"},
		{List{at(Error, "")}, "1 error"},
		{List{at(Error, "a"), at(Error, "b"), at(Warning, "")}, "2 errors and 1 warning in 2 files"},
	} {
		if got := closing(tt.list); got != tt.want {
			t.Errorf("closing = %q, want %q", got, tt.want)
		}
	}
}

func TestTextCannotSteerTheTerminal(t *testing.T) {
	src := NewSource("a\x1b.md", []byte("red \x1b[31m\x07 bell\xff"))
	f := src.At(4, 9)
	f.Rule, f.Message, f.Do = "r", "has \x1b[2J\nin it", "remove\r\nit"
	var b strings.Builder
	if err := WriteText(&b, List{f}, nil); err != nil {
		t.Fatal(err)
	}
	if strings.ContainsAny(b.String(), "\x1b\x07\r") || !utf8.ValidString(b.String()) {
		t.Errorf("control characters left: %q", b.String())
	}
	if !strings.Contains(b.String(), "do: remove it\n") {
		t.Errorf("a line end in a message broke the line: %q", b.String())
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("disk full") }

func TestWritersReportWriteErrors(t *testing.T) {
	for _, f := range Formats(Tool{}) {
		if err := f.Write(fullDisk{}, textList(), textRules); err == nil || err.Error() != "disk full" {
			t.Errorf("%s: error %v", f.Name, err)
		}
	}
}

func TestFormatsAreNamed(t *testing.T) {
	var names []string
	for _, f := range Formats(Tool{}) {
		names = append(names, f.Name)
		if f.Doc == "" || f.Write == nil {
			t.Errorf("%s: no doc or no writer", f.Name)
		}
	}
	if !slices.Equal(names, []string{"text", "json", "sarif"}) {
		t.Errorf("formats %q", names)
	}
}
