package sheet

import (
	"strings"

	"baybook/calculators/calc"

	"github.com/yuin/goldmark/ast"
)

// alone shapes a paragraph that holds nothing but one link or picture: a
// calculator, a table, a practice problem or a figure. It reports whether it
// was one.
func (sh *shaping) alone(paragraph ast.Node) bool {
	only := paragraph.FirstChild()
	if only == nil || only.NextSibling() != nil {
		return false
	}
	if image, ok := only.(*ast.Image); ok {
		sh.figure(paragraph, image)
		return true
	}
	link, ok := only.(*ast.Link)
	if !ok || !strings.HasPrefix(string(link.Destination), "calc:") {
		return false
	}
	c, ok := sh.computation(link)
	if !ok {
		return true
	}
	spread, problems := c.Calculator.ParseSweep(c.Pairs)
	for _, p := range problems {
		sh.fault(c.Link, "calc-link", p.Error(), "correct the link; baybook calc "+c.Calculator.Name+" lists what it takes")
	}
	if len(problems) > 0 {
		return true
	}
	var n ast.Node
	switch {
	case len(spread.Ranges) > 0:
		n = sh.problem(c, spread, sh.plain(link))
	case len(spread.Lists) > 0:
		n = sh.table(c, spread, sh.plain(link))
	case len(c.Outputs) > 0:
		return false // a computed number that happens to stand alone
	default:
		n = sh.live(c, sh.plain(link))
	}
	if n != nil {
		n.SetPos(paragraph.Pos())
		paragraph.Parent().ReplaceChild(paragraph.Parent(), paragraph, n)
	}
	return true
}

func (sh *shaping) live(c Computation, heading string) ast.Node {
	values, result, problems := c.Calculator.Answer(c.Pairs)
	for _, p := range problems {
		sh.fault(c.Link, "calc-link", p.Error(), "correct the link; baybook calc "+c.Calculator.Name+" lists what it takes")
	}
	if result == nil {
		return nil
	}
	l := &EmbeddedCalculator{Computation: c, Number: len(sh.sheet.Calculators) + 1, Heading: heading, Values: values, Result: result}
	sh.sheet.Calculators = append(sh.sheet.Calculators, l)
	return l
}

func (sh *shaping) table(c Computation, spread calc.Sweep, caption string) ast.Node {
	t, problem := spread.Tabulate(c.Outputs)
	if problem != nil {
		sh.fault(c.Link, "calc-link", problem.Error(), "correct the link")
		return nil
	}
	n := &Table{Computation: c, Caption: caption, Table: t}
	sh.sheet.Tables = append(sh.sheet.Tables, n)
	return n
}

func (sh *shaping) problem(c Computation, spread calc.Sweep, question string) ast.Node {
	if len(c.Outputs) != 1 || len(spread.Lists) > 0 {
		sh.fault(c.Link, "calc-link", "a practice problem asks for one #output and takes ranges, not lists", "name one output behind the query")
		return nil
	}
	p := &Problem{Computation: c, Number: len(sh.sheet.Problems) + 1, Question: question, Sweep: spread}
	sh.sheet.Problems = append(sh.sheet.Problems, p)
	return p
}

// figure turns a picture that stands alone into a figure.
func (sh *shaping) figure(paragraph ast.Node, image *ast.Image) {
	f := &Figure{
		Src: string(image.Destination), Alt: sh.plain(image), Caption: string(image.Title),
		Span: sh.linkSpan(image), Step: sh.step,
	}
	f.File = sh.sheet.Resolve(f.Src).File
	f.SetPos(image.Pos())
	paragraph.Parent().ReplaceChild(paragraph.Parent(), paragraph, f)
	sh.sheet.Figures = append(sh.sheet.Figures, f)
}

// fence keeps a fenced block's language and code.
func (sh *shaping) fence(block *ast.FencedCodeBlock) {
	f := &Fence{Language: string(block.Language(sh.src)), Step: sh.step, Line: 1}
	var code strings.Builder
	lines := block.Lines()
	starts := make([]int, lines.Len())
	for i := range lines.Len() {
		seg := lines.At(i)
		starts[i] = seg.Start
		code.Write(seg.Value(sh.src))
		if i == 0 {
			f.Span.Start = seg.Start
			f.Line = sh.sheet.Source.Position(seg.Start).Line
		}
		f.Span.End = seg.Stop
	}
	if lines.Len() == 0 {
		f.Span = Span{block.Pos(), block.Pos()}
	}
	f.Code = strings.ReplaceAll(code.String(), "\r\n", "\n")
	if f.Language == "circuit" {
		f.Circuit = circuitOf(sh.sheet.Source, f, starts, sh.report)
	}
	f.SetPos(block.Pos())
	block.Parent().ReplaceChild(block.Parent(), block, f)
	sh.sheet.Fences = append(sh.sheet.Fences, f)
}
