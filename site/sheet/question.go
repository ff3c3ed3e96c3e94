package sheet

import (
	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
)

// questions turns the items of "Check yourself" into questions: in an ordered
// list each item is one; loose, a paragraph with a task list behind it is.
func (sh *shaping) questions(sec *Section) {
	for n := sec.FirstChild(); n != nil; {
		next := n.NextSibling()
		list, ok := n.(*ast.List)
		switch {
		case ok && list.IsOrdered():
			for item := list.FirstChild(); item != nil; {
				after := item.NextSibling()
				sh.itemQuestion(sec, list, item)
				item = after
			}
			sec.RemoveChild(sec, list)
		case ok && isTaskList(list):
			next = sh.looseQuestion(sec, list)
		default:
			sh.block(n)
		}
		n = next
	}
}

// itemQuestion makes a question of a list item and puts it before the list.
func (sh *shaping) itemQuestion(sec *Section, list, item ast.Node) {
	q := sh.newQuestion(sh.spanOf(item))
	q.SetPos(item.Pos())
	for n := item.FirstChild(); n != nil; {
		next := n.NextSibling()
		item.RemoveChild(item, n)
		q.AppendChild(q, n)
		n = next
	}
	sec.InsertBefore(sec, list, q)
	sh.fillQuestion(q)
}

// looseQuestion makes a question of the paragraph before a task list, the
// list, and the block quote behind it; it returns what follows.
func (sh *shaping) looseQuestion(sec *Section, list *ast.List) ast.Node {
	q := sh.newQuestion(sh.spanOf(list))
	before, after := list.PreviousSibling(), list.NextSibling()
	sec.InsertBefore(sec, list, q)
	q.SetPos(list.Pos())
	if p, ok := before.(*ast.Paragraph); ok {
		q.SetPos(p.Pos())
		sec.RemoveChild(sec, p)
		q.AppendChild(q, p)
	}
	sec.RemoveChild(sec, list)
	q.AppendChild(q, list)
	next := after
	if quote, ok := after.(*ast.Blockquote); ok {
		next = quote.NextSibling()
		sec.RemoveChild(sec, quote)
		q.AppendChild(q, quote)
	}
	sh.fillQuestion(q)
	return next
}

func (sh *shaping) newQuestion(span Span) *Question {
	q := &Question{Number: len(sh.sheet.Questions) + 1, Span: span}
	sh.sheet.Questions = append(sh.sheet.Questions, q)
	return q
}

// fillQuestion shapes a question's parts and finds its options and reason.
func (sh *shaping) fillQuestion(q *Question) {
	for n := q.FirstChild(); n != nil; {
		next := n.NextSibling()
		if list, ok := n.(*ast.List); ok && isTaskList(list) {
			sh.options(q, list)
		} else if quote, ok := n.(*ast.Blockquote); ok {
			sh.blocks(quote)
			q.Why = quote
		} else {
			sh.block(n)
		}
		n = next
	}
	right := 0
	for _, o := range q.Options {
		if o.Right {
			right++
		}
	}
	switch {
	case len(q.Options) < 2:
		sh.fault(q.Span, "question", "a question needs at least two answers as a task list", "add “- [x] right” and “- [ ] wrong” lines under it")
	case right == 0 || right == len(q.Options):
		sh.fault(q.Span, "question", "a question needs a right answer and a wrong one", "tick the right ones with [x]")
	case q.Why == nil:
		sh.fault(q.Span, "question", "the question does not say why", "add a block quote under its answers that explains them")
	}
}

// options turns a task list into a question's options.
func (sh *shaping) options(q *Question, list *ast.List) {
	for item := list.FirstChild(); item != nil; item = item.NextSibling() {
		o := &Option{Span: sh.spanOf(item)}
		o.SetPos(item.Pos())
		for n := item.FirstChild(); n != nil; {
			next := n.NextSibling()
			item.RemoveChild(item, n)
			o.AppendChild(o, n)
			n = next
		}
		if box := checkBox(o.FirstChild()); box != nil {
			o.Right = box.IsChecked
			box.Parent().RemoveChild(box.Parent(), box)
		}
		sh.blocks(o)
		q.InsertBefore(q, list, o)
		q.Options = append(q.Options, o)
	}
	q.RemoveChild(q, list)
}

// isTaskList reports whether the first item of a list has a box.
func isTaskList(list *ast.List) bool {
	item := list.FirstChild()
	return item != nil && checkBox(item.FirstChild()) != nil
}

// checkBox is the box that a block opens with, nil where there is none.
func checkBox(block ast.Node) *extast.TaskCheckBox {
	if block == nil {
		return nil
	}
	box, _ := block.FirstChild().(*extast.TaskCheckBox)
	return box
}
