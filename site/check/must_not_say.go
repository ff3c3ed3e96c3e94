package check

import (
	"baybook/site/check/phrase"
	"baybook/site/finding"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

var mustNotSay = &Rule{
	Name: "must-not-say",
	Firm: true,
	Doc: `No sheet gives what only the vehicle's maker may give

Printed waiting times for restraint systems differ more than a thousandfold, so
any one of them is wrong somewhere. The register lists what is never
written; a sheet refers to the maker's service information instead. The rule
reads all text that a page shows, the wrong answers of a question, captions,
table cells, descriptions of figures and the words in drawings too: whoever
looks a number up on a phone does not see what it is doing there. What stands in
a title, a question or the row of a table goes with what stands under, behind or
beside it. No waiver sets this aside.

Bad:

	## Before you start

	Wait 10 minutes, then unplug the airbag.

Good:

	## Before you start

	Wait as long as the maker's service information says before work near an airbag.
`,
	Check: func(p *Pass) {
		n := &never{pass: p, src: p.Sheet.Source, words: p.facts.words}
		n.title = n.marksOf(p.facts.front.title)
		for _, t := range p.facts.passages {
			n.passage(t)
		}
		p.aside(n.alone)
	},
	CheckDrawing: func(p *Pass) { p.drawn(p.Drawing) },
	CheckBook: func(p *Pass) {
		words := &phrase.Reader{Stems: p.reader.stems}
		if g := p.Book.Glossary; g != nil && g.Source != nil {
			n := &never{pass: p, src: g.Source, words: words}
			for _, t := range g.Terms {
				n.alone(words.Read(t.Name+": "+t.Meaning), t.Span)
			}
		}
		if r := p.Book.Register; r != nil && r.Source != nil {
			n := &never{pass: p, src: r.Source, words: words}
			for _, h := range r.Hazards {
				n.alone(words.Read(h.Title+": "+h.Message), h.Span)
			}
		}
	},
}

// A never looks for what is never said, sentence by sentence, with what goes
// with each.
type never struct {
	pass *Pass
	src  *finding.Source
	// words takes texts apart that nobody has yet.
	words *phrase.Reader
	// title, section, heading and message are what was met in the titles over a
	// passage; asked in the question before an answer; row and header in the
	// cells of a table.
	title, section, heading, message, asked, row, header phrase.Marks
	// last is what was met in the sentence before.
	last phrase.Marks
	// before is the passage before.
	before *passage
}

func (n *never) set() *phrase.Set { return n.pass.reader.register.never }

// marks are those of a text as a whole.
func (n *never) marks(text string) phrase.Marks { return n.marksOf(n.words.Read(text)) }

func (n *never) marksOf(t *phrase.Text) phrase.Marks {
	return n.set().Mark(t, phrase.Sentence{Last: len(t.Words)}, phrase.Said)
}

// passage looks at one passage of the sheet.
func (n *never) passage(t *passage) {
	over := n.over(t)
	for _, s := range t.Sentences {
		own := n.set().Mark(t.Text, s, phrase.Said)
		n.judge(own, over, t.sentenceSpan(s))
		n.last = own
		switch {
		case t.kind == heading:
			n.heading = n.heading.Join(own)
		case t.kind == question:
			n.asked = n.asked.Join(own)
		case t.kind == cell && isHeader(t):
			n.header = n.header.Join(own)
		case t.kind == cell:
			n.row = n.row.Join(own)
		}
	}
	n.before = t
}

// over is what stands over, before or beside a passage and goes with it.
func (n *never) over(t *passage) phrase.Marks {
	b := n.before
	if b == nil || b.section != t.section {
		n.section, n.heading, n.asked, n.row, n.header, n.last = phrase.Marks{}, phrase.Marks{}, phrase.Marks{}, phrase.Marks{}, phrase.Marks{}, phrase.Marks{}
		if t.section != nil {
			n.section = n.marks(t.section.Title)
		}
	}
	if b == nil || b.message != t.message {
		n.message = phrase.Marks{}
		if t.message != nil {
			for _, title := range t.message.Titles {
				n.message = n.message.Join(n.marks(title.Text))
			}
		}
		n.last = phrase.Marks{}
	}
	over := n.title.Join(n.section).Join(n.message)
	if t.message == nil {
		over = over.Join(n.heading)
	}
	switch t.kind {
	case heading:
		n.heading = phrase.Marks{}
		return n.title.Join(n.section)
	case question:
		if b != nil && (b.kind == option || b.kind == why) {
			n.asked, n.last = phrase.Marks{}, phrase.Marks{}
		}
		return over.Join(n.asked)
	case option:
		n.last = phrase.Marks{} // one answer has nothing to do with the next
		return over.Join(n.asked)
	case why:
		return over.Join(n.asked)
	case cell:
		n.last = phrase.Marks{}
		if b == nil || b.kind != cell || tableOf(b) != tableOf(t) {
			n.header = phrase.Marks{}
		}
		if b == nil || b.kind != cell || b.node.Parent() != t.node.Parent() {
			n.row = phrase.Marks{}
		}
		return over.Join(n.header).Join(n.row)
	}
	return over
}

func isHeader(t *passage) bool {
	return t.node.Parent() != nil && t.node.Parent().Kind().String() == "TableHeader"
}

func tableOf(t *passage) ast.Node {
	if t.node.Parent() == nil {
		return nil
	}
	return t.node.Parent().Parent()
}

// judge reports a sentence that adds its share to what is never said.
func (n *never) judge(own, over phrase.Marks, at sheet.Span) {
	if !own.Any() {
		return
	}
	before := over.Join(n.last)
	whole := n.set().Whole(before.Join(own))
	if whole < 0 || n.set().Whole(before) >= 0 && n.set().Whole(over.Join(own)) < 0 {
		return // the sentence before was reported
	}
	if n.set().Whole(over) >= 0 && n.set().Whole(own) < 0 {
		return // so was the title
	}
	reg := n.pass.reader.register
	n.pass.ReportIn(n.src, at, "this gives a figure or a rule for “"+reg.hazards[reg.neverOwner[whole]].Title+"” that only the vehicle's maker may give",
		"take it out, and refer to the maker's service information")
}

// alone looks at a text that stands by itself, at a place of the file.
func (n *never) alone(t *phrase.Text, at sheet.Span) {
	if own := n.marksOf(t); own.Any() {
		n.last = phrase.Marks{}
		n.judge(own, n.title, at)
	}
}
