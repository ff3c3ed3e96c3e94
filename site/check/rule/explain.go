package rule

import (
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
)

// help is a rule's page in Markdown.
func help(r *check.Rule) string {
	var b strings.Builder
	b.WriteString(r.Title() + "\n")
	if why := r.Why(); why != "" {
		b.WriteString("\n" + why + "\n")
	}
	if example := ExampleOf(r); example != "" {
		b.WriteString("\nAn example; - marks what is refused, + what is accepted in its place:\n\n````diff\n" + string(example) + "````\n")
	}
	switch {
	case r.Severity == finding.Warning:
		b.WriteString("\nIt warns; the book is published all the same.\n")
	case r.Firm:
		b.WriteString("\nIt stops publishing, and no waiver sets it aside.\n")
	default:
		b.WriteString("\nIt stops publishing. A waiver with a reason sets it aside for one sheet, and is printed on it.\n")
	}
	return b.String()
}

// Explain is the text of one rule: why it is there, with an example, in
// Markdown. It is false where there is no such rule.
func Explain(name string) (string, bool) {
	r := check.Named(All(), name)
	if r == nil {
		return "", false
	}
	return "# " + r.Name + "\n\n" + help(r), true
}

// Infos describes every rule for a report, the loader's own first.
func Infos() []finding.RuleInfo {
	var infos []finding.RuleInfo
	for _, r := range All() {
		infos = append(infos, finding.RuleInfo{Name: r.Name, Short: r.Title(), Help: help(r), Severity: r.Severity})
	}
	return infos
}
