package calctest

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"

	"baybook/calculators/calc"
)

// negativeZero finds a lone -0 in anything written for people or programs.
var negativeZero = regexp.MustCompile(`(^|[^0-9.eE])-0(\.0*)?([^0-9.]|$)`)

// unbounded finds what strconv writes for a number that is none.
var unbounded = regexp.MustCompile(`\b(NaN|[+-]?Inf)\b`)

// Sound answers a query as every reader does and checks what must hold
// whatever it says: a result or a problem with words, finite numbers, no
// negative zero, well-formed JSON, markup and figure. A query that is refused
// is sound.
func Sound(c *calc.Calculator, query string) error {
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		return nil
	}
	v, r, problems := c.Answer(pairs)
	if r == nil {
		if len(problems) == 0 || problems[0].Message == "" {
			return errors.New("neither a result nor a problem in words")
		}
		return nil
	}
	for i, a := range r.Outputs {
		if math.IsNaN(a.Num) || math.IsInf(a.Num, 0) || a.Num == 0 && math.Signbit(a.Num) {
			return fmt.Errorf("output %s is %v", c.Outputs[i].Name, a.Num)
		}
		if !a.Present && len(r.Reasons) == 0 {
			return fmt.Errorf("output %s is absent without a reason", c.Outputs[i].Name)
		}
	}
	if r.Verdict != calc.OK && len(r.Reasons) == 0 {
		return fmt.Errorf("verdict %s without a reason", r.Verdict)
	}
	object, text, markup := calc.AppendJSON(nil, v, r), calc.AppendText(nil, v, r), calc.AppendMarkup(nil, v, r, "")
	if !json.Valid(object) {
		return fmt.Errorf("not JSON: %s", object)
	}
	for _, b := range [][]byte{object, text, markup} {
		if negativeZero.Match(b) || unbounded.Match(b) {
			return fmt.Errorf("a negative zero or an unbounded number in: %s", b)
		}
	}
	if err := wellFormed(markup); err != nil {
		return fmt.Errorf("markup: %w", err)
	}
	return nil
}

// wellFormed reads markup as XML, which HTML without void elements also is.
func wellFormed(b []byte) error {
	d := xml.NewDecoder(bytes.NewReader(b))
	for {
		if _, err := d.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// CheckFigure draws the result of a query and checks the drawing: well-formed
// XML, an SVG element of a size, a text alternative, and lettering that
// neither leaves the drawing nor stands over other lettering. It returns nil
// where the query is refused or there is no figure.
func CheckFigure(c *calc.Calculator, query string) error {
	pairs, _ := calc.ParseQuery(query)
	v, r, _ := c.Answer(pairs)
	if r == nil || c.Figure == nil {
		return nil
	}
	d := c.Figure(v, r)
	if d.Title == "" || d.Width <= 0 || d.Height <= 0 {
		return errors.New("a figure wants a title and a size")
	}
	svg := d.AppendSVG(nil)
	if negativeZero.Match(svg) || unbounded.Match(svg) {
		return fmt.Errorf("a negative zero or an unbounded number in: %s", svg)
	}
	letters, err := lettering(svg)
	if err != nil {
		return err
	}
	return crowded(letters, d.Width, d.Height)
}

// Computes reports whether a query gives a result.
func Computes(c *calc.Calculator, query string) bool {
	pairs, _ := calc.ParseQuery(query)
	_, r, _ := c.Answer(pairs)
	return r != nil
}
