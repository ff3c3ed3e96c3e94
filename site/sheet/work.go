package sheet

import (
	"strconv"

	"baybook/site/check/work"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// A Work is what steps can be about, and the rules over it:
// content/work.yaml. What each key of the file means stands at its top.
type Work struct {
	Source *finding.Source
	*work.Lists
	// Places are where the entries and rules stand in the file, by id.
	Places map[string]Span
}

// An item is an entry or a rule with its place.
type item[T any] struct {
	value T
	span  Span
}

// workFields are the keys of the file.
var workFields = []field[Work]{
	{"acts", "What a step can do.", true, listOf(object(actFields)), func(r *yamlReader, n *yaml.Node, w *Work) { w.Acts = listed(r, n, w, actFields, entryID) }},
	{"things", "Things and places that it is done to.", true, listOf(object(thingFields)), func(r *yamlReader, n *yaml.Node, w *Work) { w.Things = listed(r, n, w, thingFields, entryID) }},
	{"tools", "Tools and substances that it is done with.", true, listOf(object(entryFields)), func(r *yamlReader, n *yaml.Node, w *Work) { w.Tools = listed(r, n, w, entryFields, entryID) }},
	{"states", "What is special at the moment.", true, listOf(object(entryFields)), func(r *yamlReader, n *yaml.Node, w *Work) { w.States = listed(r, n, w, entryFields, entryID) }},
	{"effects", "States that some work begins or ends.", false, listOf(object(effectFields)), func(r *yamlReader, n *yaml.Node, w *Work) { w.Effects = readList(r, n, effectFields) }},
	{"needs", "What must come before a step.", false, listOf(object(needFields)), func(r *yamlReader, n *yaml.Node, w *Work) {
		w.Needs = listed(r, n, w, needFields, func(x *work.Need) string { return x.ID })
	}},
	{"never", "Orders that no sheet may give.", false, listOf(object(neverFields)), func(r *yamlReader, n *yaml.Node, w *Work) {
		w.Nevers = listed(r, n, w, neverFields, func(x *work.Never) string { return x.ID })
	}},
	{"ends", "States that no sheet may leave behind.", false, listOf(object(endFields)), func(r *yamlReader, n *yaml.Node, w *Work) { w.Ends = readList(r, n, endFields) }},
}

func entryID(e *work.Entry) string { return e.ID }

// entryFields are the keys that every entry may have.
var entryFields = []field[work.Entry]{
	{"id", "What a link names.", true, oneName, func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.ID = r.text(n) }},
	{"choose", "How to tell it from its neighbors in the list.", true, oneText, func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Choose = r.text(n) }},
	{"examples", "Work that is meant.", false, manyTexts, func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Examples = r.list(n) }},
	{"words", "Verbs or nouns that it goes by, as phrases.", false, manyTexts, func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Words = r.list(n) }},
	{"is", "Properties, by which rules speak of many entries at once.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Is = r.list(n) }},
	{"like", "An entry whose place it takes in every rule.", false, oneName, func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Like = r.text(n) }},
}

// thingFields and actFields are those of things and of acts.
var (
	thingFields = append(append([]field[work.Entry]{}, entryFields...),
		field[work.Entry]{"near", "Things that lie within reach of it.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Near = r.list(n) }})
	actFields = append(append([]field[work.Entry]{}, entryFields...),
		field[work.Entry]{"said", "Phrases that show it without a verb.", false, manyTexts, func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Said = r.list(n) }},
		field[work.Entry]{"sets", "States that begin with it.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Sets = r.list(n) }},
		field[work.Entry]{"clears", "States that end with it.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, e *work.Entry) { e.Clears = r.list(n) }})
)

// whenFields are the keys of a condition over the work of a step.
var whenFields = []field[work.When]{
	{"act", "Acts of which one is done.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.Act = r.list(n) }},
	{"at", "Things of which one is worked on or declared near.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.At = r.list(n) }},
	{"on", "Things of which one is worked on itself.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.On = r.list(n) }},
	{"reach", "Things of which one is worked on or lies within reach.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.Reach = r.list(n) }},
	{"beside", "Things of which one stands in the step as a second thing.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.Beside = r.list(n) }},
	{"with", "Tools of which one is used.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.With = r.list(n) }},
	{"state", "States of which one holds.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.State = r.list(n) }},
	{"also", "States of which one holds too.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.Also = r.list(n) }},
	{"without", "Acts, things, tools and states of which none is there.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, w *work.When) { w.Without = r.list(n) }},
}

var manyWhens = listOf(object(whenFields))

var effectFields = []field[work.Effect]{
	{"when", "The work that makes the change.", true, manyWhens, func(r *yamlReader, n *yaml.Node, e *work.Effect) { e.When = readList(r, n, whenFields) }},
	{"sets", "States that begin with it.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, e *work.Effect) { e.Sets = r.list(n) }},
	{"clears", "States that end with it.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, e *work.Effect) { e.Clears = r.list(n) }},
}

var needFields = []field[work.Need]{
	{"id", "What the rule is called.", true, oneName, func(r *yamlReader, n *yaml.Node, x *work.Need) { x.ID = r.text(n) }},
	{"when", "The work that needs it.", true, manyWhens, func(r *yamlReader, n *yaml.Node, x *work.Need) { x.When = readList(r, n, whenFields) }},
	{"need", "States of which one must hold before it.", false, listOf(oneName), func(r *yamlReader, n *yaml.Node, x *work.Need) { x.Need = r.list(n) }},
	{"first", "Work that comes before it, where the sheet does both.", false, manyWhens, func(r *yamlReader, n *yaml.Node, x *work.Need) { x.First = readList(r, n, whenFields) }},
	{"do", "What to do about it.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.Need) { x.Do = r.text(n) }},
	{"why", "Why, in a sentence.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.Need) { x.Why = r.text(n) }},
	{"source", "Where it comes from, or common practice.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.Need) { x.Source = r.text(n) }},
}

var neverFields = []field[work.Never]{
	{"id", "What the rule is called.", true, oneName, func(r *yamlReader, n *yaml.Node, x *work.Never) { x.ID = r.text(n) }},
	{"when", "Work that is never ordered.", false, manyWhens, func(r *yamlReader, n *yaml.Node, x *work.Never) { x.When = readList(r, n, whenFields) }},
	{"says", "Phrases that order it.", false, manyTexts, func(r *yamlReader, n *yaml.Node, x *work.Never) { x.Says = r.list(n) }},
	{"unless", "Phrases beside them that take a hit back.", false, manyTexts, func(r *yamlReader, n *yaml.Node, x *work.Never) { x.Unless = r.list(n) }},
	{"instead", "What to do in its place.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.Never) { x.Instead = r.text(n) }},
	{"source", "Where it comes from, or common practice.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.Never) { x.Source = r.text(n) }},
}

var endFields = []field[work.End]{
	{"state", "The state.", true, oneName, func(r *yamlReader, n *yaml.Node, x *work.End) { x.State = r.text(n) }},
	{"do", "What to do about it.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.End) { x.Do = r.text(n) }},
	{"why", "Why, in a sentence.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.End) { x.Why = r.text(n) }},
	{"source", "Where it comes from, or common practice.", true, oneText, func(r *yamlReader, n *yaml.Node, x *work.End) { x.Source = r.text(n) }},
}

// listed reads a list of entries and notes where each stands. An id that two
// share is refused: rules could not tell them apart.
func listed[T any](r *yamlReader, n *yaml.Node, w *Work, fields []field[T], id func(*T) string) []T {
	var list []T
	for _, node := range r.items(n) {
		one := item[T]{span: r.span(node)}
		readFields(r, node, &one.value, fields)
		name := id(&one.value)
		if _, twice := w.Places[name]; twice && name != "" {
			r.fault(node, "the name "+name+" is used twice in this file", "give one of the two another id")
		}
		w.Places[name] = one.span
		list = append(list, one.value)
	}
	return list
}

// readWork reads content/work.yaml.
func readWork(src *finding.Source, report func(finding.Finding)) *Work {
	w := &Work{Source: src, Lists: &work.Lists{}, Places: make(map[string]Span)}
	defer func() { w.Settle() }()
	r := newYAMLReader(src, Span{0, len(src.Text())}, "work-lists", report)
	root := r.document()
	if root == nil {
		return w
	}
	readFields(&r, root, w, workFields)
	w.Settle()
	r.workNames(w)
	return w
}

// workNames refuses names that no entry has, and properties that are also ids.
func (r *yamlReader) workNames(w *Work) {
	fault := func(id, message, do string) {
		at := w.Places[id]
		f := r.src.At(at.Start, at.End)
		f.Rule, f.Message, f.Do = r.rule, message, do
		r.report(f)
	}
	for _, k := range [...]work.Kind{work.Act, work.Thing, work.Tool, work.State} {
		for _, e := range w.Of(k) {
			for _, n := range e.Near {
				if o := w.Entry(n); o == nil || o.Kind != work.Thing {
					fault(e.ID, "near of "+e.ID+" names "+n+", which is no thing", "use the id of an entry under things")
				}
			}
			for _, s := range append(append([]string{}, e.Sets...), e.Clears...) {
				if o := w.Entry(s); o == nil || o.Kind != work.State {
					fault(e.ID, e.ID+" sets or clears "+s+", which is no state", "use the id of an entry under states")
				}
			}
			if o := w.Entry(e.Like); e.Like != "" && (o == nil || o.Kind != k) {
				fault(e.ID, e.ID+" is like "+e.Like+", which is no "+k.String(), "use the id of an entry of the same list")
			}
			for _, p := range e.Is {
				if w.Entry(p) != nil {
					fault(e.ID, "the property "+p+" of "+e.ID+" is also the id of an entry", "give the property another name")
				}
			}
		}
	}
	for _, n := range w.Needs {
		if unknown := w.Unknown(n.When, n.First); unknown != "" {
			fault(n.ID, "the need "+n.ID+" names "+unknown+", which no entry has", "use an id or a property of this file")
		}
		for _, s := range n.Need {
			if o := w.Entry(s); o == nil || o.Kind != work.State {
				fault(n.ID, "the need "+n.ID+" asks for "+s+", which is no state", "use the id of an entry under states")
			}
		}
	}
	for _, n := range w.Nevers {
		if unknown := w.Unknown(n.When); unknown != "" {
			fault(n.ID, "the rule "+n.ID+" names "+unknown+", which no entry has", "use an id or a property of this file")
		}
	}
	for i, e := range w.Effects {
		if unknown := w.Unknown(e.When); unknown != "" {
			fault("", "effect "+strconv.Itoa(i+1)+" names "+unknown+", which no entry has", "use an id or a property of this file")
		}
	}
}

// noWork is the work of a book without the file: no step declares anything.
func noWork() *Work {
	w := &Work{Lists: &work.Lists{}}
	w.Settle()
	return w
}
