package sheet

import (
	"strings"

	"baybook/calculators/calc"

	"github.com/yuin/goldmark/ast"
)

// inlines shapes the links, pictures and raw HTML in a line of text.
func (sh *shaping) inlines(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; {
		next := n.NextSibling()
		switch n := n.(type) {
		case *ast.Link:
			sh.inlineLink(parent, n)
		case *ast.Image:
			span := sh.linkSpan(n)
			sh.sheet.Links = append(sh.sheet.Links, &Link{Dest: string(n.Destination), Span: span, Step: sh.step, Image: true})
		case *ast.AutoLink:
			sh.sheet.Links = append(sh.sheet.Links, &Link{Dest: string(n.URL(sh.src)), Span: sh.spanOf(n), Step: sh.step})
		case *ast.RawHTML:
			sh.fault(sh.spanOf(n), "raw-html", "raw HTML is not accepted in a sheet", "write it in Markdown")
			parent.RemoveChild(parent, n)
		default:
			sh.inlines(n)
		}
		n = next
	}
}

// inlineLink turns a calc: or reading: link in running text into its node.
func (sh *shaping) inlineLink(parent ast.Node, link *ast.Link) {
	dest := string(link.Destination)
	switch {
	case strings.HasPrefix(dest, "calc:"):
		if v := sh.value(link); v != nil {
			parent.ReplaceChild(parent, link, v)
		}
	case strings.HasPrefix(dest, "reading:"):
		if r := sh.reading(link); r != nil {
			parent.ReplaceChild(parent, link, r)
		}
	default:
		sh.sheet.Links = append(sh.sheet.Links, &Link{Node: link, Dest: dest, Span: sh.linkSpan(link), Step: sh.step})
		sh.inlines(link)
	}
}

// value reads a computed number in running text.
func (sh *shaping) value(link *ast.Link) *Value {
	c, ok := sh.computation(link)
	if !ok {
		return nil
	}
	if len(c.Outputs) != 1 {
		sh.fault(c.Link, "calc-link", "a computed number in running text needs one #output behind its inputs", "name the output, such as #"+c.Calculator.Outputs[0].Name+", or put the link alone in a paragraph")
		return nil
	}
	v := &Value{Computation: c, Words: sh.plain(link), Span: sh.inside(link)}
	v.SetPos(link.Pos())
	_, result, problems := c.Calculator.Answer(c.Pairs)
	for _, p := range problems {
		sh.fault(c.Link, "calc-link", p.Error(), "correct the link; baybook calc "+c.Calculator.Name+" lists what it takes")
	}
	if result == nil {
		return nil
	}
	v.Result = result
	sh.sheet.Values = append(sh.sheet.Values, v)
	return v
}

// computation reads calc:NAME?query#outputs.
func (sh *shaping) computation(link *ast.Link) (Computation, bool) {
	c := Computation{Link: sh.linkSpan(link)}
	rest, outputs, named := strings.Cut(strings.TrimPrefix(string(link.Destination), "calc:"), "#")
	name, query, _ := strings.Cut(rest, "?")
	c.Calculator = sh.reader.named(name)
	if c.Calculator == nil {
		do := "use one of " + strings.Join(sh.reader.names, ", ")
		if near := calc.Nearest(name, sh.reader.names); near != "" {
			do = "did you mean " + near + "?"
		}
		sh.fault(c.Link, "calc-link", "there is no calculator “"+name+"”", do)
		return c, false
	}
	var msg string
	if c.Pairs, msg = calc.ParseQuery(query); msg != "" {
		sh.fault(c.Link, "calc-link", msg, "correct the link's query")
		return c, false
	}
	if !named {
		return c, true
	}
	for o := range strings.SplitSeq(outputs, ",") {
		i := c.Calculator.Output(o)
		if i < 0 {
			var known []string
			for _, out := range c.Calculator.Outputs {
				known = append(known, out.Name)
			}
			do := "use one of " + strings.Join(known, ", ")
			if near := calc.Nearest(o, known); near != "" {
				do = "did you mean " + near + "?"
			}
			sh.fault(c.Link, "calc-link", name+" has no output “"+o+"”", do)
			return c, false
		}
		c.Outputs = append(c.Outputs, i)
	}
	return c, true
}

// reading reads reading:ID?min=…&max=….
func (sh *shaping) reading(link *ast.Link) *Reading {
	id, query, _ := strings.Cut(strings.TrimPrefix(string(link.Destination), "reading:"), "?")
	span := sh.linkSpan(link)
	if id == "" || Slug(id) != id {
		sh.fault(span, "reading-link", "“"+id+"” is not a reading's name", "write lower-case words joined by hyphens, such as ground-drop")
		return nil
	}
	for _, r := range sh.sheet.Readings {
		if r.ID == id {
			sh.fault(span, "reading-link", "the sheet has two readings named "+id, "give one of them another name")
			return nil
		}
	}
	pairs, msg := calc.ParseQuery(query)
	var limit calc.Limit
	if msg == "" {
		limit, msg = calc.ParseLimit(pairs)
	}
	if msg != "" {
		sh.fault(span, "reading-link", msg, "write reading:"+id+"?max=100mV, with min, max or unit")
		return nil
	}
	r := &Reading{ID: id, Limit: limit, Words: sh.plain(link), Span: sh.inside(link), Link: span, Step: sh.step, Section: sh.section}
	r.SetPos(link.Pos())
	sh.sheet.Readings = append(sh.sheet.Readings, r)
	return r
}
