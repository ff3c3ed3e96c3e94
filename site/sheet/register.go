package sheet

import (
	"strings"

	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// A Register is the hazards that the shop knows: content/hazards.yaml.
type Register struct {
	Source  *finding.Source
	Hazards []*Hazard
}

// A Hazard is one row of the register.
type Hazard struct {
	ID    string
	Title string
	// Least is the lowest signal word that a message about it may carry.
	Least Word
	// Injury is true where people can be hurt, false where only things can.
	Injury bool
	// Shows is what in a sheet shows that the hazard is present.
	Shows Shows
	// Say is what a message about it must say.
	Say []Say
	// Never is what no sheet may say about it.
	Never []string
	// From is where the row comes from.
	From string
	Span Span
}

// Shows are the words that show a hazard: in steps, in tools and materials.
// Unless are words beside a hit that take it back.
type Shows struct {
	Steps, Tools, Unless []string
}

// A Say is something that a message must say: one of Any, or a number with
// one of Units.
type Say struct {
	What  string
	Any   []string
	Units []string
}

// Named finds a hazard by id, nil where there is none.
func (r *Register) Named(id string) *Hazard {
	for _, h := range r.Hazards {
		if h.ID == id {
			return h
		}
	}
	return nil
}

// Titled finds a hazard by its title in any case, nil where there is none.
func (r *Register) Titled(title string) *Hazard {
	for _, h := range r.Hazards {
		if strings.EqualFold(h.Title, title) {
			return h
		}
	}
	return nil
}

// readRegister reads content/hazards.yaml: a list of hazards.
func readRegister(src *finding.Source, report func(finding.Finding)) *Register {
	reg := &Register{Source: src}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "hazard-register", report)
	root := r.document()
	if root == nil {
		return reg
	}
	for _, item := range r.items(root) {
		h := &Hazard{Span: r.span(item)}
		r.mapping(item, map[string]func(*yaml.Node){
			"id":     func(n *yaml.Node) { h.ID = r.text(n) },
			"title":  func(n *yaml.Node) { h.Title = r.text(n) },
			"word":   func(n *yaml.Node) { h.Least, _ = ParseWord(r.oneOf(n, words[1:]...)) },
			"harm":   func(n *yaml.Node) { h.Injury = r.oneOf(n, "injury", "property") == "injury" },
			"shows":  func(n *yaml.Node) { h.Shows = r.shows(n) },
			"say":    func(n *yaml.Node) { h.Say = r.says(n) },
			"never":  func(n *yaml.Node) { h.Never = r.list(n) },
			"source": func(n *yaml.Node) { h.From = r.text(n) },
		})
		reg.Hazards = append(reg.Hazards, h)
	}
	return reg
}

func (r *yamlReader) shows(n *yaml.Node) Shows {
	var s Shows
	r.mapping(n, map[string]func(*yaml.Node){
		"steps":  func(v *yaml.Node) { s.Steps = r.list(v) },
		"tools":  func(v *yaml.Node) { s.Tools = r.list(v) },
		"unless": func(v *yaml.Node) { s.Unless = r.list(v) },
	})
	return s
}

func (r *yamlReader) says(n *yaml.Node) []Say {
	var list []Say
	for _, item := range r.items(n) {
		var s Say
		r.mapping(item, map[string]func(*yaml.Node){
			"what":  func(v *yaml.Node) { s.What = r.text(v) },
			"any":   func(v *yaml.Node) { s.Any = r.list(v) },
			"units": func(v *yaml.Node) { s.Units = r.list(v) },
		})
		list = append(list, s)
	}
	return list
}
