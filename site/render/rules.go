package render

import (
	"html/template"
	"slices"
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
)

// rulePart is what the page of rules shows of one rule.
type rulePart struct {
	Name, Short, Why string
	Bad, Good        template.HTML
	Warns, Firm      bool
}

// Rules renders the page that explains every rule, from the rules themselves.
func (p *Press) Rules() ([]byte, error) {
	var parts []rulePart
	for _, r := range slices.Concat(check.Rules, check.LoaderRules) {
		parts = append(parts, rulePart{
			Name: r.Name, Short: r.Short(), Why: r.Why(),
			Bad: p.example(r.Bad()), Good: p.example(r.Good()),
			Warns: r.Severity == finding.Warning, Firm: r.Firm,
		})
	}
	return p.print("rules.html", p.newPage("list", "rules.html", "What is checked", parts))
}

// example is a rule's example, highlighted as the Markdown that it is.
func (p *Press) example(text string) template.HTML {
	if strings.TrimSpace(text) == "" {
		return ""
	}
	return template.HTML(p.code.markup("markdown", text))
}
