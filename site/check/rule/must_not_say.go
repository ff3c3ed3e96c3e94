package rule

import (
	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/finding"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

var mustNotSay = &check.Rule{
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
beside it. No waiver sets this aside.`,
	Check: func(p *check.Pass) {
		n := &never{pass: p, src: p.Sheet.Source, words: p.Facts.Words}
		n.title = n.marksOf(p.Facts.Front.Title)
		for _, t := range p.Facts.Passages {
			n.passage(t)
		}
		p.Facts.UnboundTexts(n.alone)
	},
	CheckDrawing: func(p *check.Pass) {
		words, at := check.DrawnWords(p.Drawing.Text()) // all together: labels are set anywhere
		n := &never{pass: p, src: p.Drawing}
		n.alone(english.Read(words, p.Shared.Stems), at)
	},
	CheckBook: func(p *check.Pass) {
		words := &english.Reader{Stems: p.Shared.Stems}
		if g := p.Book.Glossary; g != nil && g.Source != nil {
			n := &never{pass: p, src: g.Source, words: words}
			for _, t := range g.Terms {
				n.alone(words.Read(t.Name+": "+t.Meaning), t.Span)
			}
		}
		if r := p.Book.Register; r != nil && r.Source != nil {
			n := &never{pass: p, src: r.Source, words: words}
			for _, h := range r.Hazards {
				n.alone(words.Read(h.Title+": "+h.Message()), h.Span)
			}
		}
	},
}

// A never looks for what a sheet must never say, sentence by sentence,
// together with the headings and cells that belong to each sentence.
type never struct {
	pass *check.Pass
	src  *finding.Source
	// words takes texts apart that nobody has yet.
	words *english.Reader
	// title, section, heading and message are what was met in the titles over a
	// passage; asked in the question before an answer; row and header in the
	// cells of a table.
	title, section, heading, message, asked, row, header english.Marks
	// last is what was met in the sentence before.
	last english.Marks
	// before is the passage before.
	before *check.Passage
}

func (n *never) set() *english.Set { return n.pass.Shared.Register.Never }

// marks are those of a text as a whole.
func (n *never) marks(text string) english.Marks { return n.marksOf(n.words.Read(text)) }

func (n *never) marksOf(t *english.Text) english.Marks {
	return n.set().Mark(t, english.Sentence{Last: len(t.Words)}, english.Said)
}

// passage looks at one passage of the sheet.
func (n *never) passage(t *check.Passage) {
	over := n.over(t)
	for _, s := range t.Sentences {
		own := n.set().Mark(t.Text, s, english.Said)
		n.judge(own, over, t.SentenceSpan(s))
		n.last = own
		switch {
		case t.Kind == check.Heading:
			n.heading = n.heading.Join(own)
		case t.Kind == check.QuestionText:
			n.asked = n.asked.Join(own)
		case t.Kind == check.Cell && isHeader(t):
			n.header = n.header.Join(own)
		case t.Kind == check.Cell:
			n.row = n.row.Join(own)
		}
	}
	n.before = t
}

// over is what stands over, before or beside a passage and goes with it.
func (n *never) over(t *check.Passage) english.Marks {
	b := n.before
	if b == nil || b.Section != t.Section {
		n.section, n.heading, n.asked, n.row, n.header, n.last = english.Marks{}, english.Marks{}, english.Marks{}, english.Marks{}, english.Marks{}, english.Marks{}
		if t.Section != nil {
			n.section = n.marks(t.Section.Title)
		}
	}
	if b == nil || b.Message != t.Message {
		n.message = english.Marks{}
		if t.Message != nil {
			for _, title := range t.Message.Titles {
				n.message = n.message.Join(n.marks(title.Text))
			}
		}
		n.last = english.Marks{}
	}
	over := n.title.Join(n.section).Join(n.message)
	if t.Message == nil {
		over = over.Join(n.heading)
	}
	switch t.Kind {
	case check.Heading:
		n.heading = english.Marks{}
		return n.title.Join(n.section)
	case check.QuestionText:
		if b != nil && (b.Kind == check.AnswerText || b.Kind == check.Explanation) {
			n.asked, n.last = english.Marks{}, english.Marks{}
		}
		return over.Join(n.asked)
	case check.AnswerText:
		n.last = english.Marks{} // one answer has nothing to do with the next
		return over.Join(n.asked)
	case check.Explanation:
		return over.Join(n.asked)
	case check.Cell:
		n.last = english.Marks{}
		if b == nil || b.Kind != check.Cell || tableOf(b) != tableOf(t) {
			n.header = english.Marks{}
		}
		if b == nil || b.Kind != check.Cell || b.Node.Parent() != t.Node.Parent() {
			n.row = english.Marks{}
		}
		return over.Join(n.header).Join(n.row)
	}
	return over
}

func isHeader(t *check.Passage) bool {
	return t.Node.Parent() != nil && t.Node.Parent().Kind().String() == "TableHeader"
}

func tableOf(t *check.Passage) ast.Node {
	if t.Node.Parent() == nil {
		return nil
	}
	return t.Node.Parent().Parent()
}

// judge reports a sentence that adds its share to what is never said.
func (n *never) judge(own, over english.Marks, at sheet.Span) {
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
	reg := n.pass.Shared.Register
	n.pass.ReportIn(n.src, at, "this gives a figure or a rule for “"+reg.Hazards[reg.NeverOwners[whole]].Title+"” that only the vehicle's maker may give",
		"take it out, and refer to the maker's service information")
}

// alone looks at a text that stands by itself, at a place of the file.
func (n *never) alone(t *english.Text, at sheet.Span) {
	if own := n.marksOf(t); own.Any() {
		n.last = english.Marks{}
		n.judge(own, n.title, at)
	}
}
