package sheet

import (
	"path"

	"baybook/site/check/work"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// Areas are how the book is laid out on its cover: content/areas.yaml.
type Areas struct {
	Source *finding.Source
	// Areas are in the order in which work goes through the book.
	Areas []Area
	// Vehicle is the drawing of the vehicle on the cover, by its path in the
	// content folder; Places are what its numbers stand for, from 1.
	Vehicle string
	Places  []Place
	// Headings part the list of calculators.
	Headings []Heading
}

// An Area is one folder of the book.
type Area struct {
	Folder, Title string
	// Figure is the path of a drawing in the content folder that stands beside
	// the title; empty where there is none.
	Figure string
	Span   Span
}

// A Place is a part of the vehicle on the cover's drawing: its Things are the
// ids of work.yaml that lie there.
type Place struct {
	Title  string
	Things []string
	Span   Span
}

// A Heading stands in the list of calculators before the one that From names.
type Heading struct {
	From, Title string
	Span        Span
}

var areasFields = []field[Areas]{
	{"areas", "The folders of the book, in the order of the cover. Folders that are not listed follow by name.", true, listOf(object(areaFields)), func(r *yamlReader, n *yaml.Node, a *Areas) {
		for _, item := range r.items(n) {
			area := Area{Span: r.span(item)}
			readFields(r, item, &area, areaFields)
			a.Areas = append(a.Areas, area)
		}
	}},
	{"vehicle", "A drawing (SVG) of the vehicle on the cover, whose numbers stand for the places, by its path in the content folder.", false, oneText, func(r *yamlReader, n *yaml.Node, a *Areas) { a.Vehicle = path.Clean(r.text(n)) }},
	{"places", "What the numbers of the drawing stand for, from 1.", false, listOf(object(placeFields)), func(r *yamlReader, n *yaml.Node, a *Areas) {
		for _, item := range r.items(n) {
			place := Place{Span: r.span(item)}
			readFields(r, item, &place, placeFields)
			a.Places = append(a.Places, place)
		}
	}},
	{"calculators", "Headings in the list of calculators.", false, listOf(object(headingFields)), func(r *yamlReader, n *yaml.Node, a *Areas) {
		for _, item := range r.items(n) {
			heading := Heading{Span: r.span(item)}
			readFields(r, item, &heading, headingFields)
			a.Headings = append(a.Headings, heading)
		}
	}},
}

var areaFields = []field[Area]{
	{"folder", "The folder's name: ground.", true, oneText, func(r *yamlReader, n *yaml.Node, a *Area) { a.Folder = r.text(n) }},
	{"title", "What the cover calls it.", true, oneText, func(r *yamlReader, n *yaml.Node, a *Area) { a.Title = r.text(n) }},
	{"figure", "A drawing (SVG) beside the title, by its path in the content folder.", false, oneText, func(r *yamlReader, n *yaml.Node, a *Area) { a.Figure = path.Clean(r.text(n)) }},
}

var placeFields = []field[Place]{
	{"title", "What the cover calls it.", true, oneText, func(r *yamlReader, n *yaml.Node, p *Place) { p.Title = r.text(n) }},
	{"things", "The things of work.yaml that lie there: [dash, fuse-box].", true, manyTexts, func(r *yamlReader, n *yaml.Node, p *Place) { p.Things = r.list(n) }},
}

var headingFields = []field[Heading]{
	{"from", "The first calculator under the heading: wire-drop.", true, oneName, func(r *yamlReader, n *yaml.Node, h *Heading) { h.From = r.text(n) }},
	{"title", "The heading.", true, oneText, func(r *yamlReader, n *yaml.Node, h *Heading) { h.Title = r.text(n) }},
}

// readAreas reads content/areas.yaml.
func readAreas(src *finding.Source, report func(finding.Finding)) *Areas {
	a := &Areas{Source: src}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "areas", report)
	root := r.document()
	if root == nil {
		return a
	}
	readFields(&r, root, a, areasFields)
	seen := make(map[string]bool)
	for _, area := range a.Areas {
		switch {
		case area.Folder == "" || area.Title == "":
			r.faultAt(area.Span, "an area has no folder or no title", "write {folder: ground, title: Ground}")
		case seen[area.Folder]:
			r.faultAt(area.Span, "the folder "+area.Folder+" is listed twice", "keep one of the two")
		}
		seen[area.Folder] = true
	}
	return a
}

// areas reports drawings and calculators that areas.yaml names and that are not
// there.
func (l *loader) areas() {
	fault := func(at Span, message, do string) {
		f := l.book.Areas.Source.At(at.Start, at.End)
		f.Rule, f.Message, f.Do = "areas", message, do
		l.report(f)
	}
	for _, a := range l.book.Areas.Areas {
		if a.Figure != "" && l.book.Drawings[a.Figure] == nil {
			fault(a.Span, "there is no drawing "+a.Figure, "name an SVG file by its path in the content folder")
		}
	}
	if v := l.book.Areas.Vehicle; v != "" && l.book.Drawings[v] == nil {
		fault(Span{}, "there is no drawing "+v, "name an SVG file by its path in the content folder")
	}
	for _, p := range l.book.Areas.Places {
		for _, id := range p.Things {
			if w := l.book.Work; w != nil && w.Entry(id) == nil {
				fault(p.Span, "there is no thing “"+id+"” in work.yaml", useOneOf(id, w.IDs(work.Thing)))
			}
		}
	}
	for _, h := range l.book.Areas.Headings {
		if h.From != "" && l.reader.named(h.From) == nil {
			fault(h.Span, "there is no calculator “"+h.From+"”", useOneOf(h.From, l.reader.names))
		}
	}
}
