package sheet

import (
	"strings"

	"baybook/site/check/work"
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
	// Under are the circumstances that call for a more serious word.
	Under []Under
	// Injury is true where people can be hurt, false where only things can.
	Injury bool
	// Harm says in a sentence what it does; Avoid how to avoid it, the order
	// first. Both are shown as they stand.
	Harm, Avoid string
	// Sign is the number of its sign in ISO 7010, "" where none fits.
	Sign string
	// Standing is true for what everybody in the bay minds all day, such as eyes
	// and hands: its message is a line.
	Standing bool
	// When is the work that brings the hazard.
	When []work.When
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

// Message is what the register says of the hazard: harm and avoidance.
func (h *Hazard) Message() string { return strings.TrimSpace(h.Harm + " " + h.Avoid) }

// MostHarm and MostAvoid are how many words the texts of a row may have: more
// is not read.
const (
	MostHarm  = 15
	MostAvoid = 30
)

// Signs are the numbers of the signs that the theme holds (ISO 7010).
var Signs = []string{"M002", "M003", "M004", "M009", "M017", "W001", "W004", "W008", "W012", "W016", "W017", "W018", "W019", "W021", "W023", "W024", "W026"}

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

// hazardFields are the keys of a row of the register.
var hazardFields = []field[Hazard]{
	{"id", "What the hazard is called in the front matter and in waivers: battery-short.", true, oneName, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.ID = r.text(n) }},
	{"row", "The row's place in the table that it was taken from: H26.", false, oneText, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Row = r.text(n) }},
	{"set", "Whether every book has the row (core) or only one that needs it (extra).", false, oneOf("core", "extra"), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Extra = r.oneOf(n, "core", "extra") == "extra" }},
	{"title", "What a safety message calls it, behind its signal word, without a full stop.", true, oneText, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Title = r.text(n) }},
	{"word", "The least signal word of its message (ANSI Z535.6).", true, oneOf(words[1:]...), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Least = r.word(n) }},
	{"under", "Graver least words for steps that also say one of the phrases.", false, listOf(object(underFields)), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Under = readList(r, n, underFields) }},
	{"hurts", "Whether people can be hurt, or only things.", true, oneOf("people", "things"), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Injury = r.oneOf(n, "people", "things") == "people" }},
	{"harm", "What it does, in one sentence of at most 15 words.", false, wordsUpTo(MostHarm), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Harm = r.wordsUpTo(n, MostHarm) }},
	{"avoid", "How to avoid it, the order first, in at most 30 words.", false, wordsUpTo(MostAvoid), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Avoid = r.wordsUpTo(n, MostAvoid) }},
	{"sign", "The number of its sign in ISO 7010, where one fits.", false, oneOf(Signs...), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Sign = r.oneOf(n, Signs...) }},
	{"standing", "true for what everybody in the bay minds all day: its message is a line.", false, form{Type: "boolean"}, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Standing = r.oneOf(n, "true", "false") == "true" }},
	{"when", "The work that brings it, in names of work.yaml.", false, manyWhens, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.When = readList(r, n, whenFields) }},
	{"shows", "What in a sheet shows that it is there.", true, object(showsFields), func(r *yamlReader, n *yaml.Node, h *Hazard) { readFields(r, n, &h.Shows, showsFields) }},
	{"say", "What its message must say.", false, listOf(object(sayFields)), func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Say = readList(r, n, sayFields) }},
	{"never", "Phrases that no sheet may hold.", false, manyTexts, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.Never = r.list(n) }},
	{"source", "Where the row comes from, and whether that was read or is from memory.", true, oneText, func(r *yamlReader, n *yaml.Node, h *Hazard) { h.From = r.text(n) }},
}

var underFields = []field[Under]{
	{"word", "The graver least word.", true, oneOf(words[1:]...), func(r *yamlReader, n *yaml.Node, u *Under) { u.Least = r.word(n) }},
	{"shows", "Phrases that call for it.", true, manyTexts, func(r *yamlReader, n *yaml.Node, u *Under) { u.Shows = r.list(n) }},
}

var showsFields = []field[Shows]{
	{"steps", "Phrases in steps, proofs, captions and titles.", false, manyTexts, func(r *yamlReader, n *yaml.Node, s *Shows) { s.Steps = r.list(n) }},
	{"tools", "Phrases in the lists of tools and materials.", false, manyTexts, func(r *yamlReader, n *yaml.Node, s *Shows) { s.Tools = r.list(n) }},
	{"unless", "Phrases in the same clause that take a hit back.", false, manyTexts, func(r *yamlReader, n *yaml.Node, s *Shows) { s.Unless = r.list(n) }},
}

var sayFields = []field[Say]{
	{"what", "What is to be said, in words for a finding.", true, oneText, func(r *yamlReader, n *yaml.Node, s *Say) { s.What = r.text(n) }},
	{"any", "Phrases of which one says it.", false, manyTexts, func(r *yamlReader, n *yaml.Node, s *Say) { s.Any = r.list(n) }},
	{"units", "Units; a number with one of them says it.", false, manyTexts, func(r *yamlReader, n *yaml.Node, s *Say) { s.Units = r.list(n) }},
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
		readFields(&r, item, h, hazardFields)
		reg.Hazards = append(reg.Hazards, h)
	}
	return reg
}

// word reads a signal word.
func (r *yamlReader) word(n *yaml.Node) Word {
	w, _ := ParseWord(r.oneOf(n, words[1:]...))
	return w
}
