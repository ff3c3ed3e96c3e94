package rule

import (
	"regexp"
	"strconv"
	"strings"

	"baybook/site/check"
	"baybook/site/check/english"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
)

var numberedStep = &check.Rule{
	Name: "numbered-step",
	Firm: true,
	Doc: `A reference to a step goes by the step's name

"Step 8" and #step-8 lead to another step as soon as one is added before it. A
step that others refer to carries a name, [](step:tap-direction) at its start;
[step 8](step:tap-direction) and fuse-tap.md#tap-direction follow it wherever it
goes. Within a sheet the fix names the step and links to it. A caption cannot
hold a link and is left alone; what a sentence says of the steps of a sheet that
it links to is not seen here.`,
	Check: func(p *check.Pass) {
		named := make(map[*sheet.Step]bool)
		for _, l := range p.Sheet.Links {
			numberedLink(p, l)
		}
		for _, t := range p.Facts.Passages {
			if t.Kind == check.Caption {
				continue
			}
			for i := 1; i < len(t.Words); i++ {
				w, before := &t.Words[i], t.Words[i-1].Lower
				if !w.Number || before != "step" && before != "steps" || linked(p.Sheet, t, i) {
					continue
				}
				n := wholeNumber(w.Text)
				at := t.Span(i-1, i+1)
				if n == 0 || n > len(p.Sheet.Steps) || inStepLink(p, at) || inCodeAt(t, at.Start) {
					continue
				}
				numberedWords(p, p.Sheet.Steps[n-1], at, named)
			}
		}
	},
}

// stepFragment is the place of a step by its number.
var stepFragment = regexp.MustCompile(`#(step-\d+)$`)

// numberedLink reports a link to a step by its number.
func numberedLink(p *check.Pass, l *sheet.Link) {
	m := stepFragment.FindStringSubmatchIndex(l.Dest)
	if m == nil || l.Node == nil {
		return
	}
	t := p.Sheet.Resolve(l.Dest)
	target := p.Book.Sheet(strings.TrimSuffix(t.File, ".md"))
	if t.Outside || target == nil {
		return // the rules on links say it
	}
	step := target.StepNamed(l.Dest[m[2]:m[3]])
	if step == nil {
		return
	}
	do := "name that step with [](step:...) at its start, and lead to the name"
	if step.Name != "" {
		do = "write #" + step.Name
	}
	p.Report(l.Span, "the link leads to step "+strconv.Itoa(step.Number)+" by its number, which changes when a step is added", do)
}

// numberedWords reports words such as "step 8", and links them where the fix
// can name the step.
func numberedWords(p *check.Pass, step *sheet.Step, at sheet.Span, named map[*sheet.Step]bool) {
	text := p.Sheet.Source.Text()
	words := string(text[at.Start:at.End])
	message := "“" + words + "” is typed, and stays when the step moves"
	name := step.Name
	if name == "" {
		name = nameFor(p.Sheet, step, p.Shared.Stems)
	}
	do := "write [" + words + "](step:" + name + ")"
	start := itemText(text, step.Span.Start)
	switch {
	case step.Name != "":
		p.Report(at, message, do, check.WithFix(do, at, "["+words+"](step:"+name+")"))
	case start < 0 || named[step]:
		p.Report(at, message, do+", and put [](step:"+name+") at the start of that step")
	default:
		named[step] = true // the next run of the fix links the others
		mark := sheet.Span{Start: start, End: start}
		p.Report(at, message, do+", and put [](step:"+name+") at the start of that step", check.WithFix("name the step "+name, mark, "[](step:"+name+") "))
	}
}

// itemStart is the number of a list item and the space behind it.
var itemStart = regexp.MustCompile(`^\s*\d+[.)]\s+`)

// itemText is where the text of the list item begins on whose first line a
// place stands; -1 where the line starts no item.
func itemText(text []byte, at int) int {
	line := strings.LastIndexByte(string(text[:at]), '\n') + 1
	m := itemStart.FindIndex(text[line:])
	if m == nil || line+m[1] > at {
		return -1
	}
	return line + m[1]
}

// nameFor makes a name of the first words of a step that are not taken.
func nameFor(s *sheet.Sheet, step *sheet.Step, stems *english.Stems) string {
	const most = 3
	var parts []string
	for _, w := range english.Read(s.Prose(step, nil).Text, stems).Words {
		if part := sheet.Slug(w.Lower); part != "" && !w.Number && !english.Determines(w.Lower) && len(parts) < most {
			parts = append(parts, part)
		}
	}
	base := strings.Join(parts, "-")
	if base == "" {
		base = "here"
	}
	name := base
	for i := 2; s.StepNamed(name) != nil; i++ {
		name = base + "-" + strconv.Itoa(i)
	}
	return name
}

// inStepLink reports a place within a link.
func inStepLink(p *check.Pass, at sheet.Span) bool {
	for _, l := range p.Sheet.Links {
		if l.Node != nil && at.Start < l.Span.End && at.End > l.Span.Start {
			return true
		}
	}
	return false
}

// inCodeAt reports a place in code within a line of text.
func inCodeAt(t *check.Passage, at int) bool {
	for c := t.Node.FirstChild(); c != nil; c = c.NextSibling() {
		code, ok := c.(*ast.CodeSpan)
		if !ok {
			continue
		}
		for s := code.FirstChild(); s != nil; s = s.NextSibling() {
			if words, ok := s.(*ast.Text); ok && at >= words.Segment.Start && at < words.Segment.Stop {
				return true
			}
		}
	}
	return false
}
