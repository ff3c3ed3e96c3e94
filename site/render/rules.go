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
func (r *Renderer) Rules() ([]byte, error) {
	var parts []rulePart
	for _, rule := range slices.Concat(check.Rules, check.LoaderRules) {
		parts = append(parts, rulePart{
			Name: rule.Name, Short: rule.Short(), Why: rule.Why(),
			Bad: r.example(rule.Bad()), Good: r.example(rule.Good()),
			Warns: rule.Severity == finding.Warning, Firm: rule.Firm,
		})
	}
	return r.print("rules.html", r.newPage("list", "rules.html", "What is checked", parts))
}

// example is a rule's example, highlighted as the Markdown that it is.
func (r *Renderer) example(text string) template.HTML {
	if strings.TrimSpace(text) == "" {
		return ""
	}
	return template.HTML(r.code.markup("markdown", text))
}
