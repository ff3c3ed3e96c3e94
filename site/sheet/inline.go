package sheet

import (
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check/work"

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

// inlineLink turns a calc:, limit: or reading: link in running text into its node, and
// takes a link that declares work down to its words.
func (sh *shaping) inlineLink(parent ast.Node, link *ast.Link) {
	dest := string(link.Destination)
	switch {
	case strings.HasPrefix(dest, "calc:"):
		if v := sh.value(link); v != nil {
			parent.ReplaceChild(parent, link, v)
		}
	case strings.HasPrefix(dest, "limit:"):
		if l := sh.limitLink(link); l != nil {
			parent.ReplaceChild(parent, link, l)
		}
	case strings.HasPrefix(dest, "reading:"):
		if r := sh.reading(link); r != nil {
			parent.ReplaceChild(parent, link, r)
		}
	case strings.HasPrefix(dest, "step:"):
		sh.stepLink(parent, link)
	case strings.HasPrefix(dest, "about:"):
		sh.nominal(parent, link)
	case strings.HasPrefix(dest, work.Scheme):
		sh.sheet.Does = append(sh.sheet.Does, &Do{Dest: dest, Words: sh.plain(link), Span: sh.inside(link), Link: sh.linkSpan(link), Step: sh.step})
		sh.inlines(link)
		for c := link.FirstChild(); c != nil; {
			next := c.NextSibling()
			parent.InsertBefore(parent, link, c)
			c = next
		}
		parent.RemoveChild(parent, link)
	default:
		sh.sheet.Links = append(sh.sheet.Links, &Link{Node: link, Dest: dest, Span: sh.linkSpan(link), Step: sh.step})
		sh.inlines(link)
	}
}

// nominal takes an about: link off its words: [12 V](about:) says that the
// number names a thing and measures nothing.
func (sh *shaping) nominal(parent ast.Node, link *ast.Link) {
	span, words := sh.linkSpan(link), sh.inside(link)
	if string(link.Destination) != "about:" || words.Start >= words.End {
		sh.fault(span, "about-link", "an about: link says of its words that they are nominal, and leads nowhere", "write [12 V](about:)")
	}
	sh.sheet.Nominal = append(sh.sheet.Nominal, words)
	sh.inlines(link)
	for c := link.FirstChild(); c != nil; {
		next := c.NextSibling()
		parent.InsertBefore(parent, link, c)
		c = next
	}
	parent.RemoveChild(parent, link)
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
	c, fault, do := sh.reader.parseComputation(strings.TrimPrefix(string(link.Destination), "calc:"))
	c.Link = sh.linkSpan(link)
	if fault != "" {
		sh.fault(c.Link, "calc-link", fault, do)
	}
	return c, fault == ""
}

// parseComputation reads NAME?query#outputs. The fault is empty where it is
// well formed; beside it stands what to do.
func (r *Reader) parseComputation(link string) (c Computation, fault, do string) {
	rest, outputs, named := strings.Cut(link, "#")
	name, query, _ := strings.Cut(rest, "?")
	if c.Calculator = r.named(name); c.Calculator == nil {
		return c, "there is no calculator “" + name + "”", useOneOf(name, r.names)
	}
	if c.Pairs, fault = calc.ParseQuery(query); fault != "" {
		return c, fault, "correct the link's query"
	}
	if !named {
		return c, "", ""
	}
	for o := range strings.SplitSeq(outputs, ",") {
		i := c.Calculator.Output(o)
		if i < 0 {
			var known []string
			for _, out := range c.Calculator.Outputs {
				known = append(known, out.Name)
			}
			return c, name + " has no output “" + o + "”", useOneOf(o, known)
		}
		c.Outputs = append(c.Outputs, i)
	}
	return c, "", ""
}

// useOneOf says what to write in place of a name that is not known.
func useOneOf(name string, known []string) string {
	if near := calc.Nearest(name, known); near != "" {
		return "did you mean " + near + "?"
	}
	return "use one of " + strings.Join(known, ", ")
}

// limitLink reads limit:ID in running text.
func (sh *shaping) limitLink(link *ast.Link) *LimitLink {
	n := &LimitLink{Words: sh.plain(link), Span: sh.inside(link), Link: sh.linkSpan(link), Step: sh.step}
	n.Limit = sh.limitNamed(strings.TrimPrefix(string(link.Destination), "limit:"), n.Link)
	if n.Limit == nil {
		return nil
	}
	n.SetPos(link.Pos())
	sh.sheet.Limits = append(sh.sheet.Limits, n)
	return n
}

// limitNamed finds a row of the register of limits, and reports one that is
// not there.
func (sh *shaping) limitNamed(id string, at Span) *Limit {
	register := sh.reader.limits
	sh.sheet.judgesByLimits = true
	if register == nil {
		sh.fault(at, "limit-link", "the book has no register of limits", "put a "+LimitFile+" at the top of the content folder; baybook begin makes one")
		return nil
	}
	l := register.Named(id)
	if l == nil {
		sh.fault(at, "limit-link", "the register has no limit “"+id+"”", useOneOf(id, register.IDs())+" Or add it to "+LimitFile)
	}
	return l
}

// reading reads reading:ID?min=…&max=…, or reading:ID?limit=….
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
	var row *Limit
	var limit calc.Limit
	if msg == "" && len(pairs) == 1 && pairs[0].Key == "limit" {
		if row = sh.limitNamed(pairs[0].Value, span); row == nil {
			return nil
		}
		var judges bool
		if limit, judges = row.Judges(); !judges {
			sh.fault(span, "reading-link", "the limit "+row.ID+" is a size and judges nothing", "make its value at most ..., at least ... or a range in "+LimitFile)
			return nil
		}
	} else if msg == "" {
		limit, msg = calc.ParseLimit(pairs)
	}
	if msg != "" {
		sh.fault(span, "reading-link", msg, "write reading:"+id+"?max=100mV, with min, max or unit, or reading:"+id+"?limit= and a limit of the register")
		return nil
	}
	r := &Reading{ID: id, Limit: limit, Row: row, Words: sh.plain(link), Span: sh.inside(link), Link: span, Step: sh.step, Section: sh.section}
	r.SetPos(link.Pos())
	sh.sheet.Readings = append(sh.sheet.Readings, r)
	return r
}
