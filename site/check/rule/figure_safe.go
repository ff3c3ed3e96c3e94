package rule

import (
	"bytes"
	"encoding/xml"
	"io"
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
or fetch on every reader's phone.`,
	CheckDrawing: func(p *check.Pass) { drawing(p, p.Drawing) },
}

// drawing reads one SVG file and reports what has no place in it.
func drawing(p *check.Pass, src *finding.Source) {
	d := xml.NewDecoder(bytes.NewReader(src.Text()))
	depth := 0
	for {
		start := int(d.InputOffset())
		token, err := d.Token()
		at := sheet.Span{Start: start, End: int(d.InputOffset())}
		if err == io.EOF {
			if depth == 0 && start == 0 {
				p.ReportIn(src, at, "the drawing is empty", "draw it, or delete the file")
			}
			return
		}
		if err != nil {
			p.ReportIn(src, at, "the drawing is not well-formed XML: "+err.Error(), "save it again as plain SVG")
			return
		}
		switch token := token.(type) {
		case xml.StartElement:
			if depth == 0 && token.Name.Local != "svg" {
				p.ReportIn(src, at, "the drawing does not start with an svg element", "save it as plain SVG")
				return
			}
			depth++
			const deepest = 64
			if depth > deepest {
				p.ReportIn(src, at, "the drawing is nested more than 64 deep", "draw it flatter")
				return
			}
			element(p, src, at, &token)
		case xml.EndElement:
			depth--
		case xml.Directive:
			p.ReportIn(src, at, "a document type or an entity has no place in a drawing", "take the line out")
		case xml.ProcInst:
			if token.Target != "xml" {
				p.ReportIn(src, at, "a processing instruction has no place in a drawing", "take the line out")
			}
		}
	}
}

// element checks one element and its attributes.
func element(p *check.Pass, src *finding.Source, at sheet.Span, e *xml.StartElement) {
	switch strings.ToLower(e.Name.Local) {
	case "script", "foreignobject", "style", "iframe", "object", "embed", "audio", "video", "a", "handler", "listener", "link", "meta", "base", "animate", "set", "animatetransform", "animatemotion", "image", "feimage":
		p.ReportIn(src, at, "the element "+e.Name.Local+" has no place in a drawing", "take it out; a drawing holds shapes and text")
		return
	}
	for _, a := range e.Attr {
		if msg := badAttribute(a); msg != "" {
			p.ReportIn(src, at, msg, "take it out; a drawing holds shapes and text, and refers to itself alone")
		}
	}
}

// badAttribute says why an attribute is refused; empty where it is not.
func badAttribute(a xml.Attr) string {
	name := strings.ToLower(a.Name.Local)
	value := strings.ToLower(strings.Join(strings.Fields(a.Value), ""))
	switch {
	case strings.HasPrefix(name, "on"):
		return "the event handler " + a.Name.Local + " has no place in a drawing"
	case name == "style":
		return "a style attribute has no place in a drawing; use presentation attributes"
	case (name == "href" || name == "src") && !strings.HasPrefix(value, "#"):
		return "the drawing refers to something outside itself: " + a.Value
	case a.Name.Space == "xmlns" || name == "xmlns":
		return ""
	case strings.Contains(value, "javascript:") || strings.Contains(value, "data:") && name != "title":
		return "the attribute " + a.Name.Local + " holds an address that could run"
	}
	for rest := value; ; {
		_, after, ok := strings.Cut(rest, "url(")
		if !ok {
			return ""
		}
		if !strings.HasPrefix(strings.TrimLeft(after, `"'`), "#") {
			return "the attribute " + a.Name.Local + " refers to something outside the drawing"
		}
		rest = after
	}
}
