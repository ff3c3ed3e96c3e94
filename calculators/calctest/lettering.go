package calctest

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"strconv"
	"strings"

	"baybook/calculators/calc"
)

// A letter is one text of a drawing and the box that it fills.
type letter struct {
	text                     string
	left, right, top, bottom float64
}

// lettering reads an SVG and finds its texts; the box is estimated from the
// type size as the drawing itself does.
func lettering(svg []byte) ([]letter, error) {
	dec := xml.NewDecoder(bytes.NewReader(svg))
	var all []letter
	var open *letter
	var anchor string
	var x, size float64
	for {
		token, err := dec.Token()
		if err == io.EOF {
			return all, nil
		}
		if err != nil {
			return nil, err
		}
		switch t := token.(type) {
		case xml.StartElement:
			if t.Name.Local != "text" {
				continue
			}
			attr := attributes(t)
			x, size, anchor = number(attr["x"]), number(attr["font-size"]), attr["text-anchor"]
			y := number(attr["y"])
			if attr["transform"] == "" { // a turned text has another box
				open = &letter{top: y - 0.72*size, bottom: y}
			}
		case xml.CharData:
			if open != nil {
				open.text += string(t)
			}
		case xml.EndElement:
			if open == nil {
				continue
			}
			// Common sans-serif lettering averages half its size a letter.
			w := calc.TextWidth(open.text, size) * 0.5 / 0.58
			open.left = x - map[string]float64{"start": 0, "middle": w / 2, "end": w}[anchor]
			open.right = open.left + w
			if strings.ContainsAny(open.text, "gjpqyµ,;()/") { // reaches under its line
				open.bottom += 0.2 * size
			}
			if open.text != "" {
				all = append(all, *open)
			}
			open = nil
		}
	}
}

// crowded finds lettering outside the drawing or over other lettering.
func crowded(letters []letter, width, height float64) error {
	const edge = 1 // px, less than is seen
	for i, a := range letters {
		if a.left < -edge || a.right > width+edge || a.top < -edge || a.bottom > height+edge {
			return fmt.Errorf("%q leaves the drawing (x %.0f to %.0f, y %.0f to %.0f of %.0f × %.0f)",
				a.text, a.left, a.right, a.top, a.bottom, width, height)
		}
		for _, b := range letters[i+1:] {
			if a.left < b.right-edge && b.left < a.right-edge && a.top < b.bottom-edge && b.top < a.bottom-edge {
				return fmt.Errorf("%q at %.0f, %.0f and %q at %.0f, %.0f stand over each other", a.text, a.left, a.bottom, b.text, b.left, b.bottom)
			}
		}
	}
	return nil
}

func attributes(t xml.StartElement) map[string]string {
	m := make(map[string]string, len(t.Attr))
	for _, a := range t.Attr {
		m[a.Name.Local] = a.Value
	}
	return m
}

func number(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}
