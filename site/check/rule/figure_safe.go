package rule

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/finding"
	"baybook/site/sheet"
)

var figureSafe = &check.Rule{
	Name: "figure-safe",
	Firm: true,
	Doc: `An SVG drawing holds shapes and text, and nothing that runs or fetches

The site puts drawings into its pages. A script, an event handler, foreign
content, a style sheet or a reference to anything outside the drawing would run
or fetch on every reader's phone. So the elements, the attributes and what these
may hold are a list; what is not on it is refused, whatever it does. A thing
that is repeated holds no further repetition, or a short file could fill the
phone's memory.`,
	CheckDrawing: func(p *check.Pass) {
		d := &drawing{pass: p, src: p.Drawing}
		d.read()
	},
}

// Bounds of one drawing: how deep its elements may be nested, how many it may
// have, and how many of them may repeat another.
const (
	deepestElement = 64
	mostElements   = 20_000
	mostUses       = 500
)

// A drawing is an SVG file that is being read.
type drawing struct {
	pass *check.Pass
	src  *finding.Source
	// open are the elements that stand open, repeated how many of them can be
	// drawn again and again.
	open           []openElement
	repeated       int
	elements, uses int
}

type openElement struct{ repeated bool }

// refuse reports a stretch of the drawing.
func (d *drawing) refuse(at sheet.Span, message, do string) { d.pass.ReportIn(d.src, at, message, do) }

// read goes over the file and reports what has no place in it.
func (d *drawing) read() {
	x := xml.NewDecoder(bytes.NewReader(d.src.Text()))
	for {
		start := int(x.InputOffset())
		token, err := x.Token()
		at := sheet.Span{Start: start, End: int(x.InputOffset())}
		if errors.Is(err, io.EOF) {
			if d.elements == 0 {
				d.refuse(at, "the drawing is empty", "draw it, or delete the file")
			}
			return
		}
		if err != nil {
			d.refuse(at, "the drawing is not well-formed XML: "+err.Error(), "save it again as plain SVG")
			return
		}
		switch token := token.(type) {
		case xml.StartElement:
			if !d.start(at, &token) {
				return
			}
		case xml.EndElement:
			d.end()
		case xml.Directive:
			d.refuse(at, "a document type or an entity has no place in a drawing", "take the line out")
		case xml.ProcInst:
			if token.Target != "xml" {
				d.refuse(at, "a processing instruction has no place in a drawing", "take the line out")
			}
		}
	}
}

// start looks at an opening tag; false where the rest need not be read.
func (d *drawing) start(at sheet.Span, e *xml.StartElement) bool {
	if len(d.open) == 0 && (e.Name.Local != "svg" || d.elements > 0) {
		d.refuse(at, "the drawing does not start with an svg element, or has a second one", "save it as plain SVG")
		return false
	}
	if d.elements++; d.elements > mostElements {
		d.refuse(at, "the drawing has more than "+strconv.Itoa(mostElements)+" elements", "draw it plainer")
		return false
	}
	if len(d.open) >= deepestElement {
		d.refuse(at, "the drawing is nested more than "+strconv.Itoa(deepestElement)+" deep", "draw it flatter")
		return false
	}
	allowed := (e.Name.Space == "" || e.Name.Space == svgSpace) && svgElements[e.Name.Local]
	if !allowed {
		d.refuse(at, "the element "+e.Name.Local+" has no place in a drawing", "take it out; a drawing holds shapes and text")
	} else {
		d.attributes(at, e)
	}
	one := openElement{repeated: svgRepeated[e.Name.Local]}
	for _, a := range e.Attr {
		one.repeated = one.repeated || a.Name.Local == "id" && e.Name.Local != "svg" && e.Name.Local != "title" && e.Name.Local != "desc"
	}
	d.open = append(d.open, one)
	if one.repeated {
		d.repeated++
	}
	if e.Name.Local == "use" {
		return d.use(at)
	}
	return true
}

// use counts an element that repeats another.
func (d *drawing) use(at sheet.Span) bool {
	d.uses++
	switch {
	case d.uses == mostUses+1:
		d.refuse(at, "the drawing repeats its parts more than "+strconv.Itoa(mostUses)+" times", "draw it plainer")
		return false
	case d.repeated > 0:
		d.refuse(at, "the element use stands within something that can be repeated itself", "draw the part out, or take the id off what holds it")
	}
	return true
}

func (d *drawing) end() {
	if n := len(d.open); n > 0 {
		if d.open[n-1].repeated {
			d.repeated--
		}
		d.open = d.open[:n-1]
	}
}

// attributes reports those that are not on the list, or hold what they may
// not.
func (d *drawing) attributes(at sheet.Span, e *xml.StartElement) {
	for _, a := range e.Attr {
		if message := d.badAttribute(&a); message != "" {
			d.refuse(at, message, "take it out; a drawing holds shapes and text, and refers to itself alone")
		}
	}
}

// badAttribute says why an attribute is refused; empty where it is not.
func (d *drawing) badAttribute(a *xml.Attr) string {
	name := a.Name.Local
	switch {
	case a.Name.Space == "xmlns" || name == "xmlns":
		if a.Value != svgSpace && a.Value != linkSpace {
			return "the namespace " + a.Value + " has no place in a drawing"
		}
		return ""
	case strings.HasPrefix(strings.ToLower(name), "on"):
		return "the event handler " + name + " has no place in a drawing"
	case name == "href" && (a.Name.Space == "" || a.Name.Space == linkSpace):
		if !svgReference(a.Value) {
			return "the drawing refers to something outside itself: " + a.Value
		}
		return ""
	case name == "space" || name == "lang":
		return ""
	case a.Name.Space != "":
		return "the attribute " + name + " has no place in a drawing"
	}
	holds, known := svgAttributes[name]
	switch {
	case !known:
		return "the attribute " + name + " has no place in a drawing"
	case strings.HasPrefix(a.Value, "url(") && !svgPaint(a.Value):
		return "the attribute " + name + " refers to something outside the drawing"
	case strings.HasPrefix(a.Value, "url(") && d.repeated > 1:
		return "the attribute " + name + " refers to a pattern from within a part that can be repeated itself"
	case !holds(a.Value):
		return "the attribute " + name + " holds something that has no place in a drawing: " + a.Value
	}
	return ""
}
