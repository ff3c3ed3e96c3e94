package check

import (
	"strings"

	"baybook/site/finding"
)

// Short is the rule's title line: what it asks, in a sentence.
func (r *Rule) Short() string {
	title, _, _ := strings.Cut(strings.TrimSpace(r.Doc), "\n")
	return title
}

// Why is what the doc says between the title line and the examples.
func (r *Rule) Why() string {
	_, rest, _ := strings.Cut(strings.TrimSpace(r.Doc), "\n")
	why, _, _ := strings.Cut(rest, "\nBad:")
	return strings.TrimSpace(why)
}

// Bad is the example that the rule refuses, its indent removed.
func (r *Rule) Bad() string {
	_, rest, _ := strings.Cut(r.Doc, "\nBad:\n")
	bad, _, _ := strings.Cut(rest, "\nGood:\n")
	return unindent(bad)
}

// Good is the example that the rule accepts, its indent removed.
func (r *Rule) Good() string {
	_, good, _ := strings.Cut(r.Doc, "\nGood:\n")
	return unindent(good)
}

// unindent takes one tab off every line.
func unindent(s string) string {
	var lines []string
	for line := range strings.SplitSeq(strings.Trim(s, "\n"), "\n") {
		lines = append(lines, strings.TrimPrefix(line, "\t"))
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n") + "\n"
}

// help is the rule's page in Markdown.
func (r *Rule) help() string {
	var b strings.Builder
	b.WriteString(r.Short() + "\n")
	if why := r.Why(); why != "" {
		b.WriteString("\n" + why + "\n")
	}
	for _, example := range [...]struct{ head, text string }{{"Bad", r.Bad()}, {"Good", r.Good()}} {
		if strings.TrimSpace(example.text) != "" {
			b.WriteString("\n" + example.head + ":\n\n````markdown\n" + example.text + "````\n")
		}
	}
	if r.Severity == finding.Warning {
		b.WriteString("\nIt warns; the book is published all the same.\n")
	} else if r.Firm {
		b.WriteString("\nIt stops publishing, and no waiver sets it aside.\n")
	} else {
		b.WriteString("\nIt stops publishing. A waiver with a reason sets it aside for one sheet, and is printed on it.\n")
	}
	return b.String()
}

// Explain is the text of one rule: why it is there, with a bad and a good
// example, in Markdown. It is false where there is no such rule.
func Explain(name string) (string, bool) {
	r := Named(name)
	if r == nil {
		return "", false
	}
	return "# " + r.Name + "\n\n" + r.help(), true
}

// Infos describes every rule for a report, the loader's own first.
func Infos() []finding.RuleInfo {
	var infos []finding.RuleInfo
	for _, list := range [...][]*Rule{LoaderRules, Rules} {
		for _, r := range list {
			infos = append(infos, finding.RuleInfo{Name: r.Name, Short: r.Short(), Help: r.help(), Severity: r.Severity})
		}
	}
	return infos
}
