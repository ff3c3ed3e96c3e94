package rule

import (
	"path"
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"
)

var stepReference = &check.Rule{
	Name: "step-reference",
	Firm: true,
	Doc: `A link to a named step says the number that the step has

A step that others refer to carries a name: [](step:tap-direction) at its start.
[step 8](step:tap-direction) leads there from the same sheet, and
[step 8](../power/fuse-tap.md#tap-direction) from another. When a step is added
before it, this finds every number that has to follow, and the fix writes it.`,
	Check: func(p *check.Pass) {
		for _, l := range p.Sheet.Links {
			if step := stepOf(p, l); step != nil {
				numberOfStep(p, l, step)
			}
		}
	},
}

// stepOf is the step that a link leads to by its name; nil where it leads
// elsewhere.
func stepOf(p *check.Pass, l *sheet.Link) *sheet.Step {
	t := p.Sheet.Resolve(l.Dest)
	if l.Node == nil || t.Outside || path.Ext(t.File) != ".md" {
		return nil
	}
	target := p.Book.Sheet(strings.TrimSuffix(t.File, ".md"))
	if target == nil {
		return nil
	}
	if step := target.StepNamed(t.Fragment); step != nil && step.Name == t.Fragment {
		return step
	}
	return nil
}

// numberOfStep compares the number in a link's words with the step's.
func numberOfStep(p *check.Pass, l *sheet.Link, step *sheet.Step) {
	prose := p.Sheet.Prose(l.Node, nil)
	words := english.Read(prose.Text, p.Shared.Stems).Words
	for i, w := range words {
		named := i > 0 && (words[i-1].Lower == "step" || words[i-1].Lower == "steps") || len(words) == 1
		if !w.Number || !named || wholeNumber(w.Text) == step.Number {
			continue
		}
		number, at := strconv.Itoa(step.Number), prose.Span(w.Start, w.End)
		p.Report(at, "the step named "+step.Name+" is step "+number+", and the text says "+w.Text, "write "+number, check.WithFix("write "+number, at, number))
	}
}
