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
//
// Its phrases are words in a row, in any case and with any ending; package
// check says in full how they are found. What each key of the file means
// stands at the top of content/hazards.yaml.
type Hazard struct {
	ID    string
	Title string
	// Row is the row's place in the table that it was taken from: H26.
	Row string
	// Extra is true where the row is not of the core set, which every book has.
	Extra bool
	// Least is the lowest signal word that a message about it may carry.
	Least Word
	// Under are the circumstances that call for a graver word.
	Under []Under
	// Injury is true where people can be hurt, false where only things can.
	Injury bool
	// Shows is what in a sheet shows that the hazard is present.
	Shows Shows
	// Message is a message that says all it must, to copy from.
	Message string
	// Say is what a message about it must say.
	Say []Say
	// Never is what no sheet may say about it.
	Never []string
	// From is where the row comes from.
	From string
	Span Span
}

// An Under is a least signal word for a hit whose step also says one of Shows.
type Under struct {
	Least Word
	Shows []string
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
			"id":      func(n *yaml.Node) { h.ID = r.text(n) },
			"row":     func(n *yaml.Node) { h.Row = r.text(n) },
			"set":     func(n *yaml.Node) { h.Extra = r.oneOf(n, "core", "extra") == "extra" },
			"title":   func(n *yaml.Node) { h.Title = r.text(n) },
			"word":    func(n *yaml.Node) { h.Least = r.word(n) },
			"under":   func(n *yaml.Node) { h.Under = r.under(n) },
			"harm":    func(n *yaml.Node) { h.Injury = r.oneOf(n, "injury", "property") == "injury" },
			"shows":   func(n *yaml.Node) { h.Shows = r.shows(n) },
			"message": func(n *yaml.Node) { h.Message = r.text(n) },
			"say":     func(n *yaml.Node) { h.Say = r.says(n) },
			"never":   func(n *yaml.Node) { h.Never = r.list(n) },
			"source":  func(n *yaml.Node) { h.From = r.text(n) },
		})
		reg.Hazards = append(reg.Hazards, h)
	}
	return reg
}

// word reads a signal word.
func (r *yamlReader) word(n *yaml.Node) Word {
	w, _ := ParseWord(r.oneOf(n, words[1:]...))
	return w
}

func (r *yamlReader) under(n *yaml.Node) []Under {
	var list []Under
	for _, item := range r.items(n) {
		var u Under
		r.mapping(item, map[string]func(*yaml.Node){
			"word":  func(v *yaml.Node) { u.Least = r.word(v) },
			"shows": func(v *yaml.Node) { u.Shows = r.list(v) },
		})
		list = append(list, u)
	}
	return list
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
