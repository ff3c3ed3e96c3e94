package finding

import (
	"bufio"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"
)

// WriteText writes findings for a person at a terminal: place, severity, rule
// and message, then the line with the words marked, what to do, and the places
// that explain it; at the end the broken rules in a sentence each, and the count.
//
//	power/battery-feed.md:31:14: error[calc-value]: the formula gives 0.41 V here
//	  31 | Expect a drop of [0.43 V](calc:wire-drop?current=6A) at full load.
//	     |                   ^^^^^^
//	  do: write 0.41 V
//	  see power/battery-feed.md:12:3: the wire's length is given here
//
// Control characters and direction overrides of the text are shown as U+FFFD,
// so that no sheet can steer the terminal. A line of a file that was refused
// unread is left out.
func WriteText(w io.Writer, list List, rules []RuleInfo) error {
	b := bufio.NewWriter(w)
	for i := range list {
		writeFinding(b, &list[i])
		b.WriteByte('\n')
	}
	writeBroken(b, list, rules)
	b.WriteString(closing(list))
	b.WriteByte('\n')
	return b.Flush()
}

func writeFinding(b *bufio.Writer, f *Finding) {
	if place := f.Pos.String(); place != "" {
		b.WriteString(printable(place) + ": ")
	}
	b.WriteString(f.Severity.String())
	if f.Rule != "" {
		b.WriteString("[" + printable(f.Rule) + "]")
	}
	b.WriteString(": " + printable(f.Message) + "\n")
	gutter := max(4, len(strconv.Itoa(f.Pos.Line)))
	if f.Pos.Line > 0 && f.Line != "" && f.Line[0] != 0 {
		line, carets := excerpt(f.Line, f.Pos.Column-1, f.Length)
		fmt.Fprintf(b, "%*d | %s\n", gutter, f.Pos.Line, line)
		if f.Pos.Column > 0 {
			fmt.Fprintf(b, "%*s | %s\n", gutter, "", carets)
		}
	}
	if f.Do != "" {
		b.WriteString("  do: " + printable(f.Do) + "\n")
	}
	if f.Fix != nil && f.Fix.Message != "" && f.Fix.Message != f.Do {
		b.WriteString("  fix: " + printable(f.Fix.Message) + "\n")
	}
	for _, n := range f.Notes {
		b.WriteString("  see ")
		if place := n.Pos.String(); place != "" {
			b.WriteString(printable(place) + ": ")
		}
		b.WriteString(printable(n.Text) + "\n")
	}
}

// writeBroken says once what each broken rule is about.
func writeBroken(b *bufio.Writer, list List, rules []RuleInfo) {
	broken := map[string]bool{}
	for i := range list {
		broken[list[i].Rule] = true
	}
	width := 0
	for _, r := range rules {
		if broken[r.Name] {
			width = max(width, len(r.Name))
		}
	}
	if width == 0 {
		return
	}
	b.WriteString("rules:\n")
	for _, r := range rules {
		if broken[r.Name] {
			fmt.Fprintf(b, "  %-*s  %s\n", width, r.Name, printable(r.Short))
		}
	}
	b.WriteByte('\n')
}

// closing counts: "2 errors and 1 warning in 3 files".
func closing(list List) string {
	if len(list) == 0 {
		return "nothing found"
	}
	files := map[string]bool{}
	for i := range list {
		if f := list[i].Pos.File; f != "" {
			files[f] = true
		}
	}
	var parts []string
	errors := list.Errors()
	if errors > 0 {
		parts = append(parts, count(errors, "error"))
	}
	if n := len(list) - errors; n > 0 {
		parts = append(parts, count(n, "warning"))
	}
	s := strings.Join(parts, " and ")
	if len(files) > 0 {
		s += " in " + count(len(files), "file")
	}
	return s
}

// printable makes one line of a text: line ends and tabs become spaces, other
// control characters, direction overrides and bytes that are no UTF-8 become
// U+FFFD.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r == '\n' || r == '\t' {
			return ' '
		}
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
			return unicode.ReplacementChar
		}
		return r
	}, strings.ReplaceAll(s, "\r\n", " "))
}
