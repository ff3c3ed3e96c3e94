package rule

import (
	"embed"
	"strings"

	"baybook/site/check"
)

//go:embed testdata/*.txtar
var exampleFiles embed.FS

// An Example shows a rule at work, as the difference between a text that it
// refuses and one that it accepts. Each line starts with a mark: - stands in
// the refused text alone, + in the accepted one alone, a space in both.
//
// The text is lines of front matter and sections that take the place of those
// of a plain sheet, or a whole sheet; further files of the book follow behind
// lines "-- name --". A file line may carry a mark too: "--- name --" with
// nothing below it takes the file out of the refused book.
type Example string

// ExampleOf reads the example of a rule from testdata, or takes it from the
// room of circuits where the rule is one of theirs; it is empty where a rule
// has none.
func ExampleOf(r *check.Rule) Example {
	if e := circuitExample(r.Name); e != "" {
		return e
	}
	text, err := exampleFiles.ReadFile("testdata/" + r.Name + ".txtar")
	if err != nil {
		return ""
	}
	return Example(text)
}

// Bad is the text that the rule refuses.
func (e Example) Bad() string { return e.side('-') }

// Good is the text that the rule accepts.
func (e Example) Good() string { return e.side('+') }

// side gives the lines of one side. A file that has lines on the other side
// alone is left out.
func (e Example) side(mark byte) string {
	var out, file strings.Builder
	name := ""
	flush := func() {
		if file.Len() > 0 {
			out.WriteString(name + file.String())
		}
		file.Reset()
	}
	for line := range strings.Lines(string(e)) {
		switch {
		case IsFileLine(line):
			flush()
			name = line
		case line[0] == mark || line[0] == ' ':
			file.WriteString(line[1:])
		case line[0] == '\n':
			file.WriteString(line)
		}
	}
	flush()
	return out.String()
}

// IsFileLine reports whether a line opens a file: -- area/name.md --. A line
// of the refused text that is a list item starts with the same marks and does
// not end with them.
func IsFileLine(line string) bool {
	return strings.HasPrefix(line, "-- ") && strings.HasSuffix(line, " --\n")
}
