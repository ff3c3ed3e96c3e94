package publish

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/svg"
)

// refusedElements are elements of SVG that run something or fetch something.
var refusedElements = []string{"script", "foreignObject", "iframe", "image", "a", "animate", "set", "animateTransform", "animateMotion", "handler", "style"}

// Drawing makes an SVG file fit to stand inside a page: names within it get a
// prefix, so that two drawings never share one, and everything that could run
// or fetch something is refused. The text alternative is the page's to give,
// so the drawing's own title and description are left out.
func Drawing(file []byte, prefix string) (string, error) {
	d := xml.NewDecoder(bytes.NewReader(file))
	d.Strict = true
	var b strings.Builder
	skip, depth := 0, 0
	for {
		token, err := d.RawToken()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return "", err
		}
		switch t := token.(type) {
		case xml.StartElement:
			depth++
			name := t.Name.Local
			if skip > 0 || name == "title" || name == "desc" || name == "metadata" {
				skip++
				continue
			}
			if err := openElement(&b, t, prefix, depth == 1); err != nil {
				return "", err
			}
		case xml.EndElement:
			depth--
			if skip > 0 {
				skip--
				continue
			}
			b.WriteString("</" + t.Name.Local + ">")
		case xml.CharData:
			if skip == 0 {
				_ = xml.EscapeText(&b, bytes.TrimRight(t, "\n\r\t")) // a Builder takes everything
			}
		}
	}
	if depth != 0 || b.Len() == 0 {
		return "", errors.New("the drawing is cut off or empty")
	}
	return shrunk(b.String())
}

// shrunk minifies a drawing. It stands in any number of pages, so this is done
// here, once, and not in each of them.
func shrunk(markup string) (string, error) {
	var out strings.Builder
	if err := svg.Minify(minify.New(), &out, strings.NewReader(markup), nil); err != nil {
		return "", err
	}
	return out.String(), nil
}

// openElement writes a start tag with its safe attributes.
func openElement(b *strings.Builder, t xml.StartElement, prefix string, outermost bool) error {
	for _, name := range refusedElements {
		if strings.EqualFold(t.Name.Local, name) {
			return fmt.Errorf("the element <%s> is not accepted in a drawing", t.Name.Local)
		}
	}
	if outermost && t.Name.Local != "svg" {
		return fmt.Errorf("the file starts with <%s>, not <svg>", t.Name.Local)
	}
	b.WriteString("<" + t.Name.Local)
	for _, a := range t.Attr {
		value, keep, err := attribute(a, prefix)
		if err != nil {
			return err
		}
		if !keep || outermost && (a.Name.Local == "role" || strings.HasPrefix(a.Name.Local, "aria-")) {
			continue
		}
		name := a.Name.Local
		if a.Name.Space != "" && a.Name.Space != "xmlns" {
			name = a.Name.Space + ":" + name
		}
		b.WriteString(" " + name + `="`)
		_ = xml.EscapeText(b, []byte(value))
		b.WriteString(`"`)
	}
	if outermost {
		b.WriteString(` aria-hidden="true" focusable="false"`)
	}
	b.WriteString(">")
	return nil
}

// attribute checks one attribute and gives names in it the drawing's prefix.
func attribute(a xml.Attr, prefix string) (value string, keep bool, err error) {
	name, value := strings.ToLower(a.Name.Local), a.Value
	switch {
	case strings.HasPrefix(name, "on"):
		return "", false, fmt.Errorf("the attribute %s, which runs something, is not accepted in a drawing", a.Name.Local)
	case name == "style":
		return "", false, errors.New("a style attribute is not accepted in a drawing; use presentation attributes such as stroke and fill")
	case a.Name.Space == "xmlns" || name == "xmlns" && a.Name.Space == "":
		return value, false, nil
	case name == "href":
		if !strings.HasPrefix(value, "#") {
			return "", false, fmt.Errorf("the drawing refers to %q; it may refer only to its own parts", value)
		}
		return "#" + prefix + value[1:], true, nil
	case name == "id":
		return prefix + value, true, nil
	case strings.Contains(value, "url("):
		inside, ok := strings.CutPrefix(strings.TrimSpace(value), "url(#")
		if !ok {
			return "", false, fmt.Errorf("the drawing refers to %q; it may refer only to its own parts", value)
		}
		return "url(#" + prefix + inside, true, nil
	}
	return value, true, nil
}
