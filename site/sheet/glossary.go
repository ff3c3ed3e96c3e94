package sheet

import (
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// A Glossary is the trade's words: content/glossary.yaml.
type Glossary struct {
	Source *finding.Source
	Terms  []Term
}

// A Term is one thing: the name that the book uses for it, other names that
// people search by, and names that sheets must not use.
type Term struct {
	Name    string
	Also    []string
	Not     []string
	Meaning string
	Span    Span
}

// termFields are the keys of an entry of the glossary.
var termFields = []field[Term]{
	{"term", "The name that the book uses.", true, oneText, func(r *yamlReader, n *yaml.Node, t *Term) { t.Name = r.text(n) }},
	{"also", "Other names that people search by.", false, manyTexts, func(r *yamlReader, n *yaml.Node, t *Term) { t.Also = r.list(n) }},
	{"not", "Names that no sheet may use for it.", false, manyTexts, func(r *yamlReader, n *yaml.Node, t *Term) { t.Not = r.list(n) }},
	{"meaning", "What it is, in a sentence.", true, oneText, func(r *yamlReader, n *yaml.Node, t *Term) { t.Meaning = r.text(n) }},
}

// readGlossary reads content/glossary.yaml: a list of terms.
func readGlossary(src *finding.Source, report func(finding.Finding)) *Glossary {
	g := &Glossary{Source: src}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "glossary", report)
	root := r.document()
	if root == nil {
		return g
	}
	for _, item := range r.items(root) {
		t := Term{Span: r.span(item)}
		readFields(&r, item, &t, termFields)
		if t.Name == "" {
			r.fault(item, "a term has no name", "add a line term: ... to it")
			continue
		}
		g.Terms = append(g.Terms, t)
	}
	return g
}
