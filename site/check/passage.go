package check

import (
	"strings"

	"baybook/site/check/phrase"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// A kind is what part of a sheet a passage is.
type kind uint8

const (
	opening  kind = iota // before the first section
	body                 // a paragraph or list item of a section
	stepText             // in a step
	warning              // in a safety message
	question             // in Check yourself: what is asked
	option               // an answer offered
	why                  // what explains the answer
	caption              // of a figure
	heading              // of the third level or lower
	cell                 // of a table
)

// A passage is the words of one leaf block of a sheet.
type passage struct {
	kind    kind
	node    ast.Node
	section *sheet.Section
	step    *sheet.Step
	message *sheet.Message
	// first is true for the first passage of its step: its own sentence.
	first bool
	// number counts the passages of the sheet.
	number int
	// right is true in an option that was ticked.
	right bool
	prose sheet.Prose
	*phrase.Text

	numbers []quantity
	counted bool
	source  answer
}

// quantities are the numbers in the passage, found once. Only the rules of its
// own sheet ask for them, one after the other.
func (p *passage) quantities() []quantity {
	if !p.counted {
		p.numbers, p.counted = quantities(p.Source), true
	}
	return p.numbers
}

// span is where words of the passage stand in the file.
func (p *passage) span(first, last int) sheet.Span {
	if first >= last {
		return sheet.Span{}
	}
	return p.prose.Span(p.Words[first].Start, p.Words[last-1].End)
}

// sentenceSpan is where a sentence stands in the file.
func (p *passage) sentenceSpan(s phrase.Sentence) sheet.Span { return p.span(s.First, s.Last) }

// in reports whether the passage stands in a section of that title.
func (p *passage) in(title string) bool {
	return p.section != nil && strings.EqualFold(p.section.Title, title)
}

// unread reports a sheet that the loader refused as a whole: what it links to
// and what stands in it is not known, and one finding says why.
func unread(s *sheet.Sheet) bool { return s.Root == nil }

// facts is what the rules of a sheet know of it.
type facts struct {
	*shows
	sheet        *sheet.Sheet
	reader       *reader
	passages     []*passage
	messageTexts map[*sheet.Message][]*passage
	// words takes the sheet's texts apart.
	words *phrase.Reader
	front frontTexts
}

// frontTexts are the texts of the front matter that rules look at.
type frontTexts struct {
	title            *phrase.Text
	tools, materials []*phrase.Text
}

func readFront(front *sheet.Front, words *phrase.Reader) frontTexts {
	t := frontTexts{title: words.Read(front.Title)}
	for _, tool := range front.Tools {
		t.tools = append(t.tools, words.Read(tool))
	}
	for _, material := range front.Materials {
		t.materials = append(t.materials, words.Read(material))
	}
	return t
}

// gather collects the passages of a sheet.
func gather(s *sheet.Sheet, r *reader) *facts {
	f := &facts{sheet: s, reader: r, messageTexts: make(map[*sheet.Message][]*passage), words: &phrase.Reader{Stems: r.stems}}
	f.front = readFront(&s.Front, f.words)
	if s.Root != nil {
		g := gatherer{facts: f, context: passage{kind: opening}}
		g.children(s.Root)
	}
	return f
}

type gatherer struct {
	facts   *facts
	context passage
	// block is passages side by side.
	block []passage
}

func (g *gatherer) children(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		g.node(c)
	}
}

// within runs with another context and puts the old one back.
func (g *gatherer) within(change func(*passage), n ast.Node) {
	before := g.context
	change(&g.context)
	g.children(n)
	g.context = before
}

func (g *gatherer) node(n ast.Node) {
	switch n := n.(type) {
	case *sheet.Section:
		g.within(func(p *passage) { p.section, p.kind = n, body }, n)
	case *sheet.Message:
		g.within(func(p *passage) { p.message, p.step, p.kind = n, n.Step, warning }, n)
	case *sheet.Step:
		before := g.context
		g.context.step, g.context.kind, g.context.first = n, stepText, true
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			g.node(c)
			if _, ok := c.(*sheet.Message); !ok {
				g.context.first = false
			}
		}
		g.context = before
	case *sheet.Question:
		g.within(func(p *passage) { p.kind = question }, n)
	case *sheet.Option:
		g.within(func(p *passage) { p.kind, p.right = option, n.Right }, n)
	case *ast.Blockquote:
		g.within(func(p *passage) {
			if p.kind == question {
				p.kind = why
			}
		}, n)
	case *sheet.Figure:
		before := g.context
		g.context.kind = caption
		g.leaf(n)
		g.context = before
	case *sheet.Fence, *sheet.EmbeddedCalculator, *sheet.Table, *sheet.Problem:
	case *ast.Heading:
		before := g.context
		g.context.kind = heading
		g.leaf(n)
		g.context = before
	default:
		if n.Type() != ast.TypeBlock {
			return
		}
		if c := n.FirstChild(); c != nil && c.Type() == ast.TypeInline {
			if n.Kind().String() == "TableCell" {
				before := g.context
				g.context.kind = cell
				g.leaf(n)
				g.context = before
				return
			}
			g.leaf(n)
			return
		}
		g.children(n)
	}
}

// leaf reads one block.
func (g *gatherer) leaf(n ast.Node) {
	if len(g.block) == cap(g.block) {
		const most = 64
		g.block = make([]passage, 0, most)
	}
	g.block = append(g.block, g.context)
	p := &g.block[len(g.block)-1]
	p.node, p.number = n, len(g.facts.passages)
	p.prose = g.facts.sheet.Prose(n, nil)
	p.Text = g.facts.words.Read(p.prose.Text)
	g.facts.passages = append(g.facts.passages, p)
	if p.message != nil {
		g.facts.messageTexts[p.message] = append(g.facts.messageTexts[p.message], p)
	}
}
