package render

import (
	"html/template"
	"slices"
	"strings"

	"baybook/site/check/rule"
	"baybook/site/finding"
)

// rulePart is what the page of rules shows of one rule.
type rulePart struct {
	Name, Title, Why string
	Example          template.HTML
	Warns, Firm      bool
}

// Rules renders the page that explains every rule, from the rules themselves.
func (r *Renderer) Rules() ([]byte, error) {
	var parts []rulePart
	for _, one := range slices.Concat(rule.Checks, rule.Loader) {
		parts = append(parts, rulePart{
			Name: one.Name, Title: one.Title(), Why: one.Why(), Example: r.example(rule.ExampleOf(one)),
			Warns: one.Severity == finding.Warning, Firm: one.Firm,
		})
	}
	return r.print("rules.html", r.newPage("list", "rules.html", "What is checked", parts))
}

// example is a rule's example, its lines marked by the side that they stand on
// and highlighted as the Markdown that they are.
func (r *Renderer) example(e rule.Example) template.HTML {
	var b strings.Builder
	for line := range strings.Lines(string(e)) {
		name, mark := "both", line[0]
		switch mark {
		case '-':
			name = "refused"
		case '+':
			name = "accepted"
		case '\n':
			mark, line = ' ', " \n"
		}
		if rule.IsFileLine(line) {
			mark, line, name = ' ', " "+line, "both"
		}
		b.WriteString(`<span class="` + name + `">` + string(mark) + r.code.markup("markdown", line[1:]) + "</span>")
	}
	return template.HTML(b.String())
}
