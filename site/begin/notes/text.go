package notes

import (
	"regexp"
	"strings"

	"baybook/site/sheet"
)

// A section is a heading of a note and the lines below it; the words before the
// first heading have none.
type section struct {
	title string
	lines []string
}

var (
	atxHeading   = regexp.MustCompile(`^\s{0,3}(#{1,6})\s*(.*?)\s*#*\s*$`)
	underline    = regexp.MustCompile(`^\s{0,3}(=+|-{2,})\s*$`)
	boldLine     = regexp.MustCompile(`^\s*(\*\*|__)([^*_]{2,60})(\*\*|__):?\s*$`)
	colonLine    = regexp.MustCompile(`^\s*([A-Za-z][A-Za-z ,/&'’-]{1,40}):\s*$`)
	orderedLine  = regexp.MustCompile(`^(\s*)(\d{1,3})\s*[.)]\s*(\S.*)$`)
	bulletLine   = regexp.MustCompile(`^(\s*)[-*+•·–—]\s+(\S.*)$`)
	stepLine     = regexp.MustCompile(`(?i)^(\s*)step\s+(\d{1,3})\s*[:.)-]\s*(\S.*)$`)
	fenceLine    = regexp.MustCompile("^\\s{0,3}(```|~~~)")
	htmlTag      = regexp.MustCompile(`(?i)</?(span|div|font|p|u|o:p|a|center|table|tbody|tr|td|th|ul|ol|li|h[1-6])\b[^<>]*>`)
	htmlBreak    = regexp.MustCompile(`(?i)<br\s*/?>`)
	htmlStrong   = regexp.MustCompile(`(?i)</?(b|strong)>`)
	htmlEmphasis = regexp.MustCompile(`(?i)</?(i|em)>`)
)

// meanings are the headings of notes that a sheet knows, by the section that
// they mean; tools and materials go to the front matter.
var meanings = []struct {
	means string
	says  []string
}{
	{toolsTitle, []string{"tools", "tools needed", "tool list", "what you need", "you need", "you will need", "equipment", "gear"}},
	{materialsTitle, []string{"materials", "parts", "parts list", "parts needed", "consumables", "bill of materials", "supplies"}},
	{sheet.BeforeYouStart, []string{"before you start", "before", "preparation", "prep", "first", "safety", "warnings", "warning", "heads up"}},
	{sheet.StepsTitle, []string{"steps", "step by step", "procedure", "method", "instructions", "how to", "how to do it", "how", "process", "what to do", "doing it", "installation", "install", "work"}},
	{sheet.ProveIt, []string{"prove it", "proof", "test", "tests", "testing", "check", "checks", "verify", "verification", "final check"}},
	{sheet.HandOver, []string{"hand over", "handover", "customer", "finish", "finishing", "when done"}},
	{"Usual mistakes", []string{"usual mistakes", "mistakes", "common mistakes", "gotchas", "pitfalls", "watch out", "problems", "troubleshooting", "tips"}},
	{sheet.Sources, []string{"sources", "source", "references", "reference", "links", "see also"}},
}

const (
	toolsTitle     = "Tools"
	materialsTitle = "Materials"
)

// meaning is the section of a sheet that a heading means; false where it is one
// of the note's own.
func meaning(title string) (string, bool) {
	plain := strings.ToLower(strings.Trim(title, " :.!*_0123456789)"))
	for _, m := range meanings {
		for _, s := range m.says {
			if plain == s {
				return m.means, true
			}
		}
	}
	return "", false
}

// tidied are the lines of a text as CommonMark wants them: one kind of line end,
// plain blanks, lists that start with - or 1., no tags that only style.
func tidied(text string) []string {
	text = strings.NewReplacer("\ufeff", "", "\r\n", "\n", "\r", "\n", "\u00a0", " ", "\u200b", "", "\u2028", "\n").Replace(text)
	text = htmlBreak.ReplaceAllString(text, "\n")
	text = htmlStrong.ReplaceAllString(text, "**")
	text = htmlEmphasis.ReplaceAllString(text, "*")
	text = htmlTag.ReplaceAllString(text, "")
	var out []string
	fenced := false
	for _, line := range strings.Split(text, "\n") {
		line = strings.TrimRight(line, " \t\\")
		if fenceLine.MatchString(line) {
			fenced = !fenced
		}
		if !fenced {
			if m := stepLine.FindStringSubmatch(line); m != nil {
				line = m[1] + m[2] + ". " + m[3]
			} else if m := orderedLine.FindStringSubmatch(line); m != nil {
				line = m[1] + m[2] + ". " + m[3]
			} else if m := bulletLine.FindStringSubmatch(line); m != nil {
				line = m[1] + "- " + m[2]
			}
		}
		out = append(out, line)
	}
	return out
}

// heading reads a heading at a line, in any of the ways that notes write one;
// used is how many lines it takes, 0 where there is none.
func heading(lines []string, i int) (title string, used int) {
	line := lines[i]
	if m := atxHeading.FindStringSubmatch(line); m != nil && m[2] != "" {
		return strings.Trim(m[2], "*_ "), 1
	}
	if i+1 < len(lines) && strings.TrimSpace(line) != "" && !bulletLine.MatchString(line) && !orderedLine.MatchString(line) && !strings.Contains(line, "|") &&
		underline.MatchString(lines[i+1]) && (i == 0 || strings.TrimSpace(lines[i-1]) == "") {
		return strings.TrimSpace(line), 2
	}
	alone := (i == 0 || strings.TrimSpace(lines[i-1]) == "")
	if m := boldLine.FindStringSubmatch(line); m != nil && alone {
		return strings.TrimRight(m[2], ": "), 1
	}
	if m := colonLine.FindStringSubmatch(line); m != nil && alone {
		if _, known := meaning(m[1]); known {
			return m[1], 1
		}
	}
	if trimmed := strings.TrimSpace(line); alone && len(trimmed) > 3 && len(trimmed) < 40 && trimmed == strings.ToUpper(trimmed) && strings.ContainsAny(trimmed, "AEIOU") && !strings.ContainsAny(trimmed, "|.") {
		return titleOf(strings.ToLower(trimmed)), 1
	}
	return "", 0
}

// sectionsOf cuts a note at its headings.
func sectionsOf(lines []string) []section {
	list := []section{{}}
	fenced := false
	for i := 0; i < len(lines); {
		if fenceLine.MatchString(lines[i]) {
			fenced = !fenced
		}
		if title, used := heading(lines, i); used > 0 && !fenced {
			list = append(list, section{title: title})
			i += used
			continue
		}
		last := &list[len(list)-1]
		last.lines = append(last.lines, lines[i])
		i++
	}
	return list
}

// items are the entries of a list, or the words of one line parted by commas;
// rest is what follows.
func items(lines []string) (list, rest []string) {
	for i, line := range lines {
		line = strings.TrimSpace(line)
		switch m := listed(line); {
		case m != "":
			list = append(list, m)
		case line == "":
		case len(list) == 0 && len(line) < 120 && strings.Contains(line, ","):
			for _, word := range strings.Split(strings.TrimRight(line, "."), ",") {
				if word = strings.TrimSpace(word); word != "" {
					list = append(list, word)
				}
			}
		default:
			return list, lines[i:]
		}
	}
	return list, nil
}

// listed is the text of a line of a list, "" for another line.
func listed(line string) string {
	if m := bulletLine.FindStringSubmatch(line); m != nil {
		return m[2]
	}
	if m := orderedLine.FindStringSubmatch(line); m != nil {
		return m[3]
	}
	return ""
}

// hasList reports whether a section has a list of any kind.
func hasList(lines []string) bool {
	for _, line := range lines {
		if listed(line) != "" {
			return true
		}
	}
	return false
}

// numbered makes a list of lines an ordered one, counted from 1: steps are. Lines
// between go under the step before them. first are the lines before the list.
func numbered(lines []string) (first, list []string, count int) {
	for _, line := range lines {
		text, top := "", false
		if m := orderedLine.FindStringSubmatch(line); m != nil && len(m[1]) < 2 {
			text, top = m[3], true
		} else if m := bulletLine.FindStringSubmatch(line); m != nil && len(m[1]) < 2 {
			text, top = m[2], true
		}
		switch {
		case top:
			count++
			list = append(list, "", itoa(count)+". "+text)
		case count == 0:
			first = append(first, line)
		case strings.TrimSpace(line) == "":
			list = append(list, "")
		default:
			list = append(list, "", "   "+strings.TrimSpace(line))
		}
	}
	return first, list, count
}

// hasOrdered reports whether a section has a list that counts.
func hasOrdered(lines []string) bool {
	n := 0
	for _, line := range lines {
		if m := orderedLine.FindStringSubmatch(line); m != nil && len(m[1]) < 2 {
			n++
		}
	}
	return n > 1
}
