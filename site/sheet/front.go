package sheet

import (
	"strconv"
	"strings"
	"time"

	"baybook/calculators/calc"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// Front is the front matter of a sheet: the data fields of its title block
// (ISO 7200) and what the checks need to know.
type Front struct {
	Title, Number, Revision string
	Date                    time.Time
	Owner                   string
	Kind                    Kind
	Minutes                 int
	Skill                   Skill
	Tools, Materials        []string
	// Needs are the numbers of the sheets that are learned before this one.
	Needs    []string
	Hazards  []string
	Synonyms []string
	Waivers  []Waiver
	Work     SheetWork
	Approved Approval
	// Draft is true for a sheet that is not to be published yet.
	Draft bool
	// Customer, Vehicle and Order are whom and what a job is for.
	Customer, Vehicle, Order string

	places map[string]Span
}

// Place is where a key's value stands in the file; the start of the file
// where the key is not given.
func (f *Front) Place(key string) Span { return f.places[key] }

// Has reports whether a key is given.
func (f *Front) Has(key string) bool { _, ok := f.places[key]; return ok }

// A Kind is what sort of sheet it is.
type Kind string

const (
	Procedure Kind = "procedure"
	Reference Kind = "reference"
	Job       Kind = "job"
	Guide     Kind = "guide"
)

// A Skill is who may do the work unsupervised.
type Skill string

const (
	Apprentice Skill = "apprentice"
	Installer  Skill = "installer"
	Lead       Skill = "lead"
)

// A Waiver sets a hazard aside at one step, or a rule for one sheet, with a
// reason that is printed there.
type Waiver struct {
	Hazard, Rule, Reason string
	// Step is the number of the step at which the hazard is not there; 0 is what
	// stands outside the steps, and what included sheets bring along.
	Step int
	// By is who says so.
	By   string
	Span Span
}

// A SheetWork is what is so at every step of a sheet, in ids of work.yaml.
type SheetWork struct {
	// State holds from the first step on, At is worked on in every step.
	State, At []string
	// Leaves are the states that the sheet leaves behind on purpose.
	Leaves []string
}

var sheetWorkFields = []field[SheetWork]{
	{"state", "States that hold from the first step on.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *SheetWork) { w.State = r.list(n) }},
	{"at", "Things that every step is about.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *SheetWork) { w.At = r.list(n) }},
	{"leaves", "States that the sheet leaves behind on purpose.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *SheetWork) { w.Leaves = r.list(n) }},
}

// An Approval is who approved the sheet, and when.
type Approval struct {
	By   string
	Date time.Time
}

// A key is one key of the front matter: how its value is read, and which
// kinds of sheet must or may have it.
type key struct {
	name, doc string
	holds     form
	required  bool
	// only, where not empty, is the one kind of sheet that may have the key.
	only Kind
	read func(r *frontReader, n *yaml.Node)
}

// neededBy reports whether a sheet of a kind must have the key: no procedure
// starts before its tools and materials are laid out.
func (k *key) neededBy(kind Kind) bool {
	return k.required || kind == Procedure && (k.name == "tools" || k.name == "materials")
}

// keys are all keys, in the order in which a person writes them.
var keys = []key{
	{name: "title", doc: "What the sheet is called.", holds: oneText, required: true, read: func(r *frontReader, n *yaml.Node) { r.front.Title = r.text(n) }},
	{name: "number", doc: "Document number: letters, a hyphen, digits.", holds: pattern("^[A-Z]+-[0-9]+$"), required: true, read: func(r *frontReader, n *yaml.Node) { r.front.Number = r.number(n) }},
	{name: "revision", doc: "Revision index: A for the first issue.", holds: pattern("^[A-Z]{1,2}$"), required: true, read: func(r *frontReader, n *yaml.Node) { r.front.Revision = r.revision(n) }},
	{name: "date", doc: "Day of the last change.", holds: oneDay, required: true, read: func(r *frontReader, n *yaml.Node) { r.front.Date = r.date(n) }},
	{name: "owner", doc: "Who keeps the sheet: Electrical bench.", holds: oneText, required: true, read: func(r *frontReader, n *yaml.Node) { r.front.Owner = r.text(n) }},
	{name: "kind", doc: "What sort of sheet it is.", holds: oneOf(string(Procedure), string(Reference), string(Job), string(Guide)), required: true, read: func(r *frontReader, n *yaml.Node) {
		r.front.Kind = Kind(r.oneOf(n, string(Procedure), string(Reference), string(Job), string(Guide)))
	}},
	{name: "minutes", doc: "How long the work takes, in minutes.", holds: wholeNumber, required: true, read: func(r *frontReader, n *yaml.Node) { r.front.Minutes = r.whole(n) }},
	{name: "skill", doc: "Who may do the work unsupervised.", holds: oneOf(string(Apprentice), string(Installer), string(Lead)), required: true, read: func(r *frontReader, n *yaml.Node) {
		r.front.Skill = Skill(r.oneOf(n, string(Apprentice), string(Installer), string(Lead)))
	}},
	{name: "needs", doc: "Numbers of the sheets that are learned before this one.", holds: manyTexts, read: func(r *frontReader, n *yaml.Node) { r.front.Needs = r.list(n) }},
	{name: "tools", doc: "What is laid out before step 1, protective equipment among it.", holds: manyTexts, read: func(r *frontReader, n *yaml.Node) { r.front.Tools = r.list(n) }},
	{name: "materials", doc: "What is used up or fitted.", holds: manyTexts, read: func(r *frontReader, n *yaml.Node) { r.front.Materials = r.list(n) }},
	{name: "hazards", doc: "Ids of hazards that the words cannot show.", holds: manyTexts, read: func(r *frontReader, n *yaml.Node) { r.front.Hazards = r.list(n) }},
	{name: "synonyms", doc: "Other words that people search the sheet by.", holds: manyTexts, read: func(r *frontReader, n *yaml.Node) { r.front.Synonyms = r.list(n) }},
	{name: "work", doc: "What is so at every step of the sheet.", holds: object(sheetWorkFields), read: func(r *frontReader, n *yaml.Node) { readFields(&r.yamlReader, n, &r.front.Work, sheetWorkFields) }},
	{name: "waive", doc: "Hazards and rules set aside here, each with a reason.", holds: listOf(object(waiverFields)), read: func(r *frontReader, n *yaml.Node) { r.front.Waivers = r.waivers(n) }},
	{name: "approved", doc: "Who approved the sheet, and when.", holds: object(approvalFields), read: func(r *frontReader, n *yaml.Node) { r.front.Approved = r.approval(n) }},
	{name: "draft", doc: "true while the sheet is being written: it is shown by serve, stops nothing, and build leaves it out.", holds: form{Type: "boolean"}, read: func(r *frontReader, n *yaml.Node) { r.front.Draft = r.oneOf(n, "true", "false") == "true" }},
	{name: "customer", doc: "The customer that a job is for.", holds: oneText, only: Job, read: func(r *frontReader, n *yaml.Node) { r.front.Customer = r.text(n) }},
	{name: "vehicle", doc: "The vehicle that a job is for.", holds: oneText, only: Job, read: func(r *frontReader, n *yaml.Node) { r.front.Vehicle = r.text(n) }},
	{name: "order", doc: "The order that a job is for.", holds: oneText, only: Job, read: func(r *frontReader, n *yaml.Node) { r.front.Order = r.text(n) }},
}

// KeyNames lists the keys that front matter may have.
func KeyNames() []string {
	var names []string
	for _, k := range keys {
		names = append(names, k.name)
	}
	return names
}

// frontReader reads front matter and says what is wrong with it.
type frontReader struct {
	yamlReader
	front *Front
}

// readFront reads the YAML between the fences. at is where it starts in the
// file; the findings' places are the file's.
func readFront(src *finding.Source, at Span, report func(finding.Finding)) Front {
	front := Front{places: make(map[string]Span)}
	r := &frontReader{yamlReader: newYAMLReader(src, at, "front-matter", report), front: &front}
	root := r.document()
	if root == nil {
		return front
	}
	if root.Kind != yaml.MappingNode {
		r.fault(root, "front matter is not a list of key: value lines", "write one key: value on each line")
		return front
	}
	for i := 0; i+1 < len(root.Content); i += 2 {
		r.key(root.Content[i], root.Content[i+1])
	}
	for _, k := range keys {
		if (k.required || k.neededBy(front.Kind)) && !front.Has(k.name) {
			r.missing(k.name)
		}
		if k.only != "" && front.Has(k.name) && front.Kind != "" && front.Kind != k.only {
			span := front.places[k.name]
			f := src.At(span.Start, span.End)
			f.Rule, f.Message = "front-matter", k.name+" belongs to a "+string(k.only)+", and this sheet is a "+string(front.Kind)
			f.Do = "take the line out, or make the sheet a " + string(k.only)
			report(f)
		}
	}
	return front
}

// key reads one key and its value.
func (r *frontReader) key(name, value *yaml.Node) {
	for _, k := range keys {
		if k.name != name.Value {
			continue
		}
		if r.front.Has(k.name) {
			r.fault(name, "the key "+k.name+" is given twice", "keep one of the two lines")
			return
		}
		r.front.places[k.name] = r.span(value)
		k.read(r, value)
		return
	}
	do := "use one of " + strings.Join(KeyNames(), ", ")
	if near := calc.Nearest(name.Value, KeyNames()); near != "" {
		do = "did you mean " + near + "?"
	}
	r.fault(name, "the key "+strconv.Quote(name.Value)+" is not known", do)
}

// missing reports a key that must be there, at the top of the front matter.
func (r *frontReader) missing(name string) {
	at := r.starts[0]
	r.faultAt(Span{at, at}, "the front matter has no "+name, "add a line "+name+": ... to it")
}

func (r *frontReader) number(n *yaml.Node) string {
	s := r.text(n)
	letters, digits, ok := strings.Cut(s, "-")
	if s == "" || ok && isAll(letters, 'A', 'Z') && isAll(digits, '0', '9') && len(s) <= 16 {
		return s
	}
	r.fault(n, strconv.Quote(s)+" is not a document number", "write capital letters, a hyphen and digits, such as GR-02")
	return ""
}

func (r *frontReader) revision(n *yaml.Node) string {
	s := r.text(n)
	if s == "" || isAll(s, 'A', 'Z') && len(s) <= 2 {
		return s
	}
	r.fault(n, strconv.Quote(s)+" is not a revision index", "write one or two capital letters, A for the first issue")
	return ""
}

// isAll reports whether s is not empty and holds only bytes from low to high.
func isAll(s string, low, high byte) bool {
	for i := range len(s) {
		if s[i] < low || s[i] > high {
			return false
		}
	}
	return s != ""
}

// waiverFields are the keys of a waiver.
var waiverFields = []field[Waiver]{
	{"hazard", "Id of the hazard that cannot be met here.", false, oneName, func(r *yamlReader, n *yaml.Node, w *Waiver) { w.Hazard = r.text(n) }},
	{"rule", "Name of the rule that is set aside.", false, oneName, func(r *yamlReader, n *yaml.Node, w *Waiver) { w.Rule = r.text(n) }},
	{"step", "Number of the step at which the hazard is not there; without it, outside the steps.", false, wholeNumber, func(r *yamlReader, n *yaml.Node, w *Waiver) { w.Step = r.whole(n) }},
	{"reason", "Why, in at least five words; it is printed at the step.", true, oneText, func(r *yamlReader, n *yaml.Node, w *Waiver) { w.Reason = r.text(n) }},
	{"by", "Who says so: a name or a role of the shop.", true, oneText, func(r *yamlReader, n *yaml.Node, w *Waiver) { w.By = r.text(n) }},
}

// approvalFields are the keys of an approval.
var approvalFields = []field[Approval]{
	{"by", "The role that approved it.", true, oneText, func(r *yamlReader, n *yaml.Node, a *Approval) { a.By = r.text(n) }},
	{"date", "The day on which it did.", true, oneDay, func(r *yamlReader, n *yaml.Node, a *Approval) { a.Date = r.date(n) }},
}

// fewestWords is how many words a waiver's reason has at least.
const fewestWords = 5

// waiverForm is a waiver to copy.
const waiverForm = "{hazard: id, step: 4, reason: why it is not there at this step, by: name}"

func (r *frontReader) waivers(n *yaml.Node) []Waiver {
	var list []Waiver
	for _, item := range r.items(n) {
		w := Waiver{Span: r.span(item)}
		readFields(&r.yamlReader, item, &w, waiverFields)
		switch {
		case (w.Hazard == "") == (w.Rule == "") || w.Reason == "":
			r.fault(item, "a waiver needs a reason and one of hazard or rule", waiverForm)
			continue
		case len(strings.Fields(w.Reason)) < fewestWords:
			r.fault(item, "the reason “"+w.Reason+"” is too short for a reader to judge it", "say in at least five words why it is not there, as in "+waiverForm)
			continue
		case strings.TrimSpace(w.By) == "":
			r.fault(item, "nobody stands behind this waiver", "add by: and the name or role of who says so, as in "+waiverForm)
			continue
		}
		list = append(list, w)
	}
	return list
}

func (r *frontReader) approval(n *yaml.Node) Approval {
	var a Approval
	readFields(&r.yamlReader, n, &a, approvalFields)
	if n.Kind == yaml.MappingNode && (a.By == "" || a.Date.IsZero()) {
		r.fault(n, "an approval needs who gave it and when", "write {by: the role, date: 2026-10-02}")
	}
	return a
}
