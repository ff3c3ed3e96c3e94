package sheet

import (
	"strings"

	"baybook/site/finding"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
)

// shapingKey carries a file's shaping through the Markdown parser.
var shapingKey = parser.NewContextKey()

// A transformer is the Markdown extension that turns CommonMark's tree into a
// sheet's: sections, messages, steps, computations, readings, questions.
type transformer struct{}

// A shaping is the work on one file.
type shaping struct {
	reader *Reader
	sheet  *Sheet
	report func(finding.Finding)
	src    []byte
	// step and section are where the walk stands.
	step    *Step
	section *Section
	// stepLinks lead to steps by name.
	stepLinks []*Link
}

// Transform implements parser.ASTTransformer.
func (transformer) Transform(doc *ast.Document, reader text.Reader, pc parser.Context) {
	sh, ok := pc.Get(shapingKey).(*shaping)
	if !ok {
		return
	}
	sh.src = reader.Source()
	sh.gatherSections(doc)
	for n := doc.FirstChild(); n != nil; {
		next := n.NextSibling()
		if sec, ok := n.(*Section); ok {
			sh.section = sec
			sh.shapeSection(sec)
		} else {
			sh.block(n)
		}
		n = next
	}
	sh.leadToSteps()
}

// fault reports something wrong in a stretch of the file.
func (sh *shaping) fault(span Span, rule, message, do string) {
	f := sh.sheet.Source.At(span.Start, span.End)
	f.Rule, f.Message, f.Do = rule, message, do
	sh.report(f)
}

// gatherSections puts every heading of the second level and what follows it
// into a Section.
func (sh *shaping) gatherSections(doc *ast.Document) {
	var current *Section
	used := make(map[string]bool)
	for n := doc.FirstChild(); n != nil; {
		next := n.NextSibling()
		if h, ok := n.(*ast.Heading); ok && h.Level == 2 {
			span := sh.spanOf(h)
			title := strings.TrimSpace(sh.plain(h))
			current = &Section{Title: title, Anchor: Slug(title), Span: span}
			if used[current.Anchor] {
				sh.fault(span, "anchor", "two sections of this sheet have the address #"+current.Anchor, "give one of them another heading")
			}
			used[current.Anchor] = true
			current.SetPos(h.Pos())
			doc.ReplaceChild(doc, n, current)
			sh.sheet.Sections = append(sh.sheet.Sections, current)
		} else if h, ok := n.(*ast.Heading); ok && h.Level == 1 {
			sh.fault(sh.spanOf(h), "heading", "the sheet's title stands in the front matter, not in a heading", "write ## for a section")
		} else if current != nil {
			doc.RemoveChild(doc, n)
			current.AppendChild(current, n)
		}
		n = next
	}
}

// Slug is the address of a heading: lower case, words joined by hyphens.
func Slug(title string) string {
	var b strings.Builder
	gap := false
	for _, c := range strings.ToLower(title) {
		if c >= 'a' && c <= 'z' || c >= '0' && c <= '9' {
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			gap = false
			b.WriteRune(c)
			continue
		}
		gap = true
	}
	return b.String()
}

// shapeSection shapes the blocks of one section by what its title promises.
func (sh *shaping) shapeSection(sec *Section) {
	switch {
	case sec.Is(StepsTitle):
		sh.steps(sec)
	case sec.Is(CheckYourself):
		sh.questions(sec)
	case sec.Is(WorkTitle):
		sh.blocks(sec)
		sh.work(sec)
	default:
		sh.blocks(sec)
	}
}

// blocks shapes every child block.
func (sh *shaping) blocks(parent ast.Node) {
	for n := parent.FirstChild(); n != nil; {
		next := n.NextSibling()
		sh.block(n)
		n = next
	}
}

// block shapes one block and everything in it.
func (sh *shaping) block(n ast.Node) {
	switch n := n.(type) {
	case *ast.Blockquote:
		if m := sh.message(n); m != nil {
			sh.blocks(m)
			return
		}
		sh.blocks(n)
	case *ast.FencedCodeBlock:
		sh.fence(n)
	case *ast.Paragraph, *ast.TextBlock:
		if !sh.alone(n) {
			sh.inlines(n)
		}
	case *ast.HTMLBlock:
		sh.fault(sh.spanOf(n), "raw-html", "raw HTML is not accepted in a sheet", "write it in Markdown")
		n.Parent().RemoveChild(n.Parent(), n)
	case *ast.Heading:
		sh.inlines(n)
	case *extast.TableCell:
		sh.inlines(n)
	default:
		sh.blocks(n)
	}
}

// steps turns the ordered list of the section into steps.
func (sh *shaping) steps(sec *Section) {
	for n := sec.FirstChild(); n != nil; {
		next := n.NextSibling()
		list, ok := n.(*ast.List)
		if !ok || !list.IsOrdered() {
			sh.block(n)
			n = next
			continue
		}
		if len(sh.sheet.Steps) > 0 {
			sh.fault(sh.spanOf(list), "steps", "the section Steps has more than one numbered list, so numbers would repeat", "make it one list: indent what belongs to a step under it")
		}
		steps := &Steps{}
		steps.SetPos(list.Pos())
		for item := list.FirstChild(); item != nil; {
			after := item.NextSibling()
			steps.AppendChild(steps, sh.newStep(list, item))
			item = after
		}
		sec.ReplaceChild(sec, list, steps)
		n = next
	}
}

// newStep makes a step of a list item, its messages put before its sentence.
func (sh *shaping) newStep(list *ast.List, item ast.Node) *Step {
	step := &Step{Number: len(sh.sheet.Steps) + list.Start}
	if list.Start != 1 && len(sh.sheet.Steps) == 0 {
		sh.fault(sh.spanOf(item), "steps", "the steps start at another number than 1", "number the first step 1")
		step.Number = 1
	} else {
		step.Number = len(sh.sheet.Steps) + 1
	}
	step.SetPos(item.Pos())
	sh.sheet.Steps = append(sh.sheet.Steps, step)
	sh.step = step
	for n := item.FirstChild(); n != nil; {
		next := n.NextSibling()
		item.RemoveChild(item, n)
		step.AppendChild(step, n)
		n = next
	}
	sh.blocks(step)
	sh.hoist(step)
	for n := step.FirstChild(); n != nil; n = n.NextSibling() {
		if _, ok := n.(*Message); !ok {
			step.Span = sh.spanOf(n)
			break
		}
	}
	sh.step = nil
	return step
}

// hoist moves the messages of a step before everything else in it, the most
// serious first, for a warning read after the step has come too late.
func (sh *shaping) hoist(step *Step) {
	var messages []*Message
	for n := step.FirstChild(); n != nil; n = n.NextSibling() {
		if m, ok := n.(*Message); ok {
			messages = append(messages, m)
		}
	}
	for word := Notice; word <= Danger; word++ {
		for i := len(messages) - 1; i >= 0; i-- {
			if m := messages[i]; m.Word == word {
				step.RemoveChild(step, m)
				if first := step.FirstChild(); first != nil {
					step.InsertBefore(step, first, m)
				} else {
					step.AppendChild(step, m)
				}
			}
		}
	}
}

// work finds the sheets that a job composes: the first link of each item of
// the section's ordered list.
func (sh *shaping) work(sec *Section) {
	for n := sec.FirstChild(); n != nil; n = n.NextSibling() {
		list, ok := n.(*ast.List)
		if !ok || !list.IsOrdered() {
			continue
		}
		for item := list.FirstChild(); item != nil; item = item.NextSibling() {
			span := sh.spanOf(item)
			found := false
			for _, l := range sh.sheet.Links {
				if l.Span.Start >= span.Start && l.Span.End <= span.End && !found {
					sh.sheet.Work = append(sh.sheet.Work, l)
					found = true
				}
			}
			if !found {
				sh.fault(span, "work", "this item of the work names no sheet", "start it with a link to the sheet")
			}
		}
	}
}
