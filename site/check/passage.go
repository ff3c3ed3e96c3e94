package check

import (
	"slices"
	"strings"

	"baybook/site/check/english"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

// A PassageKind is what part of a sheet a passage is.
type PassageKind uint8

const (
	Opening      PassageKind = iota // before the first section
	Body                            // a paragraph or list item of a section
	StepText                        // in a step
	MessageText                     // in a safety message
	QuestionText                    // in Check yourself: what is asked
	AnswerText                      // an answer offered
	Explanation                     // what explains the answer
	Caption                         // of a figure
	Heading                         // of the third level or lower
	Cell                            // of a table
)

// A Passage is the words of one leaf block of a sheet.
type Passage struct {
	Kind    PassageKind
	Node    ast.Node
	Section *sheet.Section
	Step    *sheet.Step
	Message *sheet.Message
	// First is true for the first passage of its step: its own sentence.
	First bool
	// Number counts the passages of the sheet.
	Number int
	// Right is true in an answer that was ticked.
	Right bool
	Prose sheet.Prose
	*english.Text

	// nominal are the stretches of the sheet that are called nominal.
	nominal    []sheet.Span
	quantities []english.Quantity
	counted    bool
	source     sourceAnswer
}

// A sourceAnswer is whether a passage names a source, once that is known.
type sourceAnswer uint8

const (
	notAsked sourceAnswer = iota
	namesSource
	namesNone
)

// Quantities are the numbers in the passage, found at the first call. Rules
// of one sheet run one after the other, so nothing guards it.
func (p *Passage) Quantities() []english.Quantity {
	if !p.counted {
		p.quantities, p.counted = english.Quantities(p.Source), true
	}
	return p.quantities
}

// NamesSource reports whether the passage says where its numbers come from; it
// is found out at the first call.
func (p *Passage) NamesSource(l *english.Lexicon) bool {
	if p.source == notAsked {
		p.source = namesNone
		if l.NamesSource(p.Source) {
			p.source = namesSource
		}
	}
	return p.source == namesSource
}

// Span is where words of the passage stand in the file.
func (p *Passage) Span(first, last int) sheet.Span {
	if first >= last {
		return sheet.Span{}
	}
	return p.Prose.Span(p.Words[first].Start, p.Words[last-1].End)
}

// SentenceSpan is where a sentence stands in the file.
func (p *Passage) SentenceSpan(s english.Sentence) sheet.Span { return p.Span(s.First, s.Last) }

// QuantitySpan is where a number and its unit stand in the file.
func (p *Passage) QuantitySpan(q *english.Quantity) sheet.Span { return p.Prose.Span(q.Start, q.End) }

// Under reports whether the passage stands in a section with one of the
// titles.
func (p *Passage) Under(titles ...string) bool {
	return p.Section != nil && slices.ContainsFunc(titles, func(t string) bool { return strings.EqualFold(p.Section.Title, t) })
}

// TellsWork reports whether a passage speaks of this work: preparation, steps,
// proof, hand-over and messages.
func (p *Passage) TellsWork() bool {
	return p.Step != nil || p.Message != nil || p.Under(sheet.BeforeYouStart, sheet.ProveIt, sheet.HandOver)
}

// Nominal reports whether the sheet calls a number nominal or descriptive.
func (p *Passage) Nominal(q *english.Quantity) bool {
	if len(p.nominal) == 0 {
		return false
	}
	at := p.Prose.Span(q.Start, q.NumberEnd).Start
	return slices.ContainsFunc(p.nominal, func(s sheet.Span) bool { return at >= s.Start && at < s.End })
}

// Computes reports whether a number is part of a computed value or a reading,
// which rules of their own judge.
func (p *Passage) Computes(q *english.Quantity) bool {
	if p.Node == nil {
		return false
	}
	at := p.Prose.Span(q.Start, q.NumberEnd).Start
	for c := p.Node.FirstChild(); c != nil; c = c.NextSibling() {
		switch n := c.(type) {
		case *sheet.Value:
			if at >= n.Span.Start && at < n.Span.End {
				return true
			}
		case *sheet.Reading:
			if at >= n.Span.Start && at < n.Span.End {
				return true
			}
		case *sheet.LimitLink:
			if at >= n.Span.Start && at < n.Span.End {
				return true
			}
		}
	}
	return false
}

// A gatherer collects the passages of a sheet.
type gatherer struct {
	facts   *SheetFacts
	context Passage
	// block is passages side by side.
	block []Passage
}

func (g *gatherer) children(n ast.Node) {
	for c := n.FirstChild(); c != nil; c = c.NextSibling() {
		g.node(c)
	}
}

// within runs with another context and puts the old one back.
func (g *gatherer) within(change func(*Passage), n ast.Node) {
	before := g.context
	change(&g.context)
	g.children(n)
	g.context = before
}

func (g *gatherer) node(n ast.Node) {
	switch n := n.(type) {
	case *sheet.Section:
		g.within(func(p *Passage) { p.Section, p.Kind = n, Body }, n)
	case *sheet.Message:
		g.within(func(p *Passage) { p.Message, p.Step, p.Kind = n, n.Step, MessageText }, n)
	case *sheet.Step:
		before := g.context
		g.context.Step, g.context.Kind, g.context.First = n, StepText, true
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			g.node(c)
			if _, ok := c.(*sheet.Message); !ok {
				g.context.First = false
			}
		}
		g.context = before
	case *sheet.Question:
		g.within(func(p *Passage) { p.Kind = QuestionText }, n)
	case *sheet.Option:
		g.within(func(p *Passage) { p.Kind, p.Right = AnswerText, n.Right }, n)
	case *ast.Blockquote:
		g.within(func(p *Passage) {
			if p.Kind == QuestionText {
				p.Kind = Explanation
			}
		}, n)
	case *sheet.Figure:
		before := g.context
		g.context.Kind = Caption
		g.leaf(n)
		g.context = before
	case *sheet.Fence, *sheet.EmbeddedCalculator, *sheet.Table, *sheet.Problem:
	case *ast.Heading:
		before := g.context
		g.context.Kind = Heading
		g.leaf(n)
		g.context = before
	default:
		if n.Type() != ast.TypeBlock {
			return
		}
		if c := n.FirstChild(); c != nil && c.Type() == ast.TypeInline {
			if n.Kind().String() == "TableCell" {
				before := g.context
				g.context.Kind = Cell
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
		g.block = make([]Passage, 0, most)
	}
	g.block = append(g.block, g.context)
	p := &g.block[len(g.block)-1]
	p.Node, p.Number, p.nominal = n, len(g.facts.Passages), g.facts.Sheet.Nominal
	p.Prose = g.facts.Sheet.Prose(n, nil)
	p.Text = g.facts.Words.Read(p.Prose.Text)
	g.facts.Passages = append(g.facts.Passages, p)
	if p.Message != nil {
		g.facts.MessageTexts[p.Message] = append(g.facts.MessageTexts[p.Message], p)
	}
}
