package sheet

import (
	"strings"

	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// Words are the words that a shop teaches the checks: content/words.yaml. What
// each list is for stands at its top.
type Words struct {
	Source     *finding.Source
	Sources    []string
	Verbs      []string
	Harms      []string
	Protection []Protection
	Vague      []string
	Stems      []Stem
}

// A Protection is one kind of protective equipment and the phrases for it.
type Protection struct {
	What    string
	Phrases []string
}

// A Stem is a word and forms of it that its endings do not tell.
type Stem struct {
	Stem  string
	Forms []string
}

// wordFields are the keys of the file.
var wordFields = []field[Words]{
	{"sources", "Names of sources of numbers, letter for letter.", true, manyTexts, func(r *yamlReader, n *yaml.Node, w *Words) { w.Sources = r.list(n) }},
	{"verbs", "Verbs that a step may start with.", true, manyTexts, func(r *yamlReader, n *yaml.Node, w *Words) { w.Verbs = r.small(n) }},
	{"harms", "Words that tell what may happen.", true, manyTexts, func(r *yamlReader, n *yaml.Node, w *Words) { w.Harms = r.small(n) }},
	{"protection", "Protective equipment.", false, listOf(object(protectionFields)), func(r *yamlReader, n *yaml.Node, w *Words) { w.Protection = readList(r, n, protectionFields) }},
	{"vague", "Phrases for amounts that nobody can check.", false, manyTexts, func(r *yamlReader, n *yaml.Node, w *Words) { w.Vague = r.list(n) }},
	{"stems", "Irregular forms of words.", false, listOf(object(stemFields)), func(r *yamlReader, n *yaml.Node, w *Words) { w.Stems = readList(r, n, stemFields) }},
}

var protectionFields = []field[Protection]{
	{"what", "What it is, as a finding names it.", true, oneText, func(r *yamlReader, n *yaml.Node, p *Protection) { p.What = r.text(n) }},
	{"phrases", "Phrases that name it.", true, manyTexts, func(r *yamlReader, n *yaml.Node, p *Protection) { p.Phrases = r.list(n) }},
}

var stemFields = []field[Stem]{
	{"stem", "The stem that the forms have.", true, oneText, func(r *yamlReader, n *yaml.Node, s *Stem) { s.Stem = strings.ToLower(r.text(n)) }},
	{"forms", "Words as they are spelled.", true, manyTexts, func(r *yamlReader, n *yaml.Node, s *Stem) { s.Forms = r.small(n) }},
}

// small reads a list of words in small letters.
func (r *yamlReader) small(n *yaml.Node) []string {
	list := r.list(n)
	for i := range list {
		list[i] = strings.ToLower(list[i])
	}
	return list
}

// readWords reads content/words.yaml.
func readWords(src *finding.Source, report func(finding.Finding)) *Words {
	w := &Words{Source: src}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "words", report)
	if root := r.document(); root != nil {
		readFields(&r, root, w, wordFields)
	}
	return w
}
