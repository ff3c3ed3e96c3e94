package render

import (
	"path"
	"strconv"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/renderer"
	gmhtml "github.com/yuin/goldmark/renderer/html"
	"github.com/yuin/goldmark/util"
)

// newMarkdown makes the renderer of one sheet's tree: CommonMark's nodes as
// goldmark renders them, ours from the list in parts. It does not change the
// tree, so that a tree may be rendered many times and by many goroutines.
func newMarkdown(p *parts) renderer.Renderer {
	return renderer.NewRenderer(renderer.WithNodeRenderers(
		util.Prioritized(p, 100),
		util.Prioritized(extension.NewTableHTMLRenderer(), 500),
		util.Prioritized(extension.NewTaskCheckBoxHTMLRenderer(), 500),
		util.Prioritized(gmhtml.NewRenderer(), 1000),
	))
}

// parts renders the nodes that a sheet adds to CommonMark's.
type parts struct {
	book *Renderer
	// sheet is what is rendered; nil where nothing in it leads to a sheet.
	sheet *sheet.Sheet
	// root is the way from the sheet's page to the site's root.
	root string
	// guards names, for each step, the messages that the step view puts beside
	// it.
	guards map[*sheet.Step]string
	// limits are the sheet's limits in the order of their notes.
	limits []*sheet.Limit
	// told is what the reader of the sheet is told, nil where nothing is; written
	// counts the build's blocks that stand at the step so far.
	told    *check.Messages
	written int
}

// RegisterFuncs implements renderer.NodeRenderer.
func (r *parts) RegisterFuncs(reg renderer.NodeRendererFuncRegisterer) {
	reg.Register(sheet.KindSection, r.section)
	reg.Register(sheet.KindMessage, r.message)
	reg.Register(sheet.KindSteps, r.steps)
	reg.Register(sheet.KindStep, r.step)
	reg.Register(sheet.KindValue, r.value)
	reg.Register(sheet.KindReading, r.reading)
	reg.Register(sheet.KindEmbeddedCalculator, r.live)
	reg.Register(sheet.KindTable, r.table)
	reg.Register(sheet.KindProblem, r.problem)
	reg.Register(sheet.KindFigure, r.figure)
	reg.Register(sheet.KindQuestion, r.question)
	reg.Register(sheet.KindOption, r.option)
	reg.Register(sheet.KindFence, r.fence)
	reg.Register(ast.KindLink, r.link)
	reg.Register(extast.KindTable, r.plainTable)
	reg.Register(extast.KindTableCell, r.plainCell)
	reg.Register(sheet.KindLimitLink, r.limitLink)
}

func write(w util.BufWriter, s ...string) {
	for _, part := range s {
		_, _ = w.WriteString(part) // a BufWriter keeps its first error until Flush
	}
}

func text(w util.BufWriter, s string) { write(w, escape(s)) }

func (r *parts) section(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		write(w, "</section>\n")
		return ast.WalkContinue, nil
	}
	s := n.(*sheet.Section)
	write(w, `<section id="`, s.Anchor, `" aria-labelledby="`, s.Anchor, `-h"`)
	if part := s.Part(); part != "" {
		write(w, ` data-part="`, part, `"`)
	}
	write(w, `><h2 id="`, s.Anchor, `-h">`)
	text(w, s.Title)
	write(w, "</h2>\n")
	return ast.WalkContinue, nil
}

// alert is the safety alert symbol of ANSI Z535.4; it belongs to injury alone,
// so a NOTICE has none.
const alert = `<svg class="alert" viewBox="0 0 24 22" width="26" height="24" aria-hidden="true"><path d="M12 1 23.4 21H.6z" fill="currentColor"/><path class="mark" d="M10.7 7.5h2.6l-.5 7h-1.6zM12 18.6a1.5 1.5 0 1 1 0-3 1.5 1.5 0 0 1 0 3z"/></svg>`

func (r *parts) message(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	m := n.(*sheet.Message)
	if !entering {
		if r.told != nil {
			for _, h := range r.told.Adds[m] {
				write(w, `<p class="avoid">`)
				text(w, h.Avoid)
				write(w, `</p>`)
			}
		}
		write(w, "</div></div>\n")
		if r.told != nil && m.Step != nil {
			next, _ := m.NextSibling().(*sheet.Message)
			r.before(w, m.Step, next)
		}
		return ast.WalkContinue, nil
	}
	r.panelStart(w, m.Word, messageName(m), "")
	write(w, `<p class="titles"><strong>`)
	for i, t := range m.Titles {
		if i > 0 {
			write(w, " · ")
		}
		text(w, t.Text)
	}
	write(w, "</strong></p>")
	return ast.WalkContinue, nil
}

// messageName is the address that the list of what can hurt points at: the
// hazard's title, and for a title that stands twice, the step.
func messageName(m *sheet.Message) string {
	name := "message"
	if len(m.Titles) > 0 {
		name += "-" + sheet.Slug(m.Titles[0].Text)
	}
	if m.Step != nil {
		name += "-" + m.Step.Anchor()
	} else if m.Section != nil {
		name += "-" + m.Section.Anchor
	}
	return name
}

func (r *parts) steps(w util.BufWriter, _ []byte, _ ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		write(w, `<ol class="steps">`, "\n")
	} else {
		write(w, "</ol>\n")
	}
	return ast.WalkContinue, nil
}

func (r *parts) step(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		write(w, "</div></li>\n")
		return ast.WalkContinue, nil
	}
	step := n.(*sheet.Step)
	number := strconv.Itoa(step.Number)
	write(w, `<li class="step" id="step-`, number, `"`)
	if guards := r.guards[step]; guards != "" {
		write(w, ` data-guards="`, guards, `"`)
	}
	write(w, `><div class="place"><a href="#step-`, number, `" aria-label="Step `, number, `">`, number,
		`</a><input type="checkbox" class="tick" aria-label="Step `, number, ` done"></div><div class="what">`)
	if step.Name != "" {
		write(w, `<span id="`, step.Name, `"></span>`) // where links of other sheets lead
	}
	r.waivedAt(w, step)
	if r.told != nil {
		r.written = 0
		next, _ := step.FirstChild().(*sheet.Message)
		r.before(w, step, next)
	}
	return ast.WalkContinue, nil
}

// waivedAt says which hazards are set aside at a step, why, and by whom.
func (r *parts) waivedAt(w util.BufWriter, step *sheet.Step) {
	for _, waived := range r.sheet.Front.Waivers {
		h := r.book.Book.Register.Named(waived.Hazard)
		if waived.Step != step.Number || h == nil {
			continue
		}
		write(w, `<p class="set-aside"><strong>Set aside here:</strong> `)
		text(w, h.Title+". "+waived.Reason+" ("+waived.By+")")
		write(w, "</p>\n")
	}
}

func (r *parts) value(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		v := n.(*sheet.Value)
		write(w, `<a class="value" href="`, r.root, CalculatorPage(v.Calculator), "#calculator-1?")
		text(w, v.Query())
		write(w, `">`)
		text(w, v.Words)
		write(w, "</a>")
	}
	return ast.WalkSkipChildren, nil
}

func (r *parts) reading(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkSkipChildren, nil
	}
	v := n.(*sheet.Reading)
	var limit []calc.Pair
	if v.Limit.HasMin {
		limit = append(limit, calc.Pair{Key: "min", Value: v.Limit.Min.String()})
	}
	if v.Limit.HasMax {
		limit = append(limit, calc.Pair{Key: "max", Value: v.Limit.Max.String()})
	}
	limit = append(limit, calc.Pair{Key: "unit", Value: v.Limit.Unit.Symbol})
	write(w, `<span class="reading" id="`, v.Anchor(), `" data-limit="`)
	text(w, calc.FormatQuery(limit))
	write(w, `"><span class="limit">`)
	text(w, v.Words)
	write(w, `</span>`)
	r.mark(w, v.Row)
	write(w, ` <input inputmode="decimal" autocomplete="off" size="7" aria-label="Reading: `)
	text(w, v.Words)
	write(w, `"> `, readingUnits(v.Limit.Unit), ` <span class="judged" role="status"></span></span>`)
	return ast.WalkSkipChildren, nil
}

func (r *parts) table(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		t := n.(*sheet.Table)
		write(w, `<div class="wide" tabindex="0" role="region" aria-label="`)
		text(w, t.Caption)
		write(w, `">`)
		_, _ = w.Write(calc.AppendTable(nil, t.Table, t.Caption))
		write(w, "</div>\n")
	}
	return ast.WalkSkipChildren, nil
}

// plainTable writes a table of the sheet's own. One too wide for a phone is
// moved sideways in its frame, which the keyboard reaches too.
func (r *parts) plainTable(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		write(w, "</table></div>\n")
		return ast.WalkContinue, nil
	}
	number := 0
	_ = ast.Walk(n.OwnerDocument(), func(other ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering && other.Kind() == extast.KindTable {
			number++
		}
		if other == n {
			return ast.WalkStop, nil
		}
		return ast.WalkContinue, nil
	})
	write(w, `<div class="wide" tabindex="0" role="region" aria-label="Table `, strconv.Itoa(number), `"><table>`, "\n")
	return ast.WalkContinue, nil
}

// plainCell writes a cell of such a table. goldmark's own keeps a column's
// alignment by changing the tree.
func (r *parts) plainCell(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	cell := n.(*extast.TableCell)
	tag := "td"
	if cell.Parent().Kind() == extast.KindTableHeader {
		tag = "th"
	}
	switch {
	case !entering:
		write(w, "</", tag, ">\n")
	case cell.Alignment == extast.AlignNone:
		write(w, "<", tag, ">")
	default:
		write(w, "<", tag, ` style="text-align:`, cell.Alignment.String(), `">`)
	}
	return ast.WalkContinue, nil
}

func (r *parts) figure(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if !entering {
		return ast.WalkSkipChildren, nil
	}
	f := n.(*sheet.Figure)
	write(w, `<figure class="drawing">`)
	drawing := ""
	if r.book.Figures != nil {
		drawing = r.book.Figures(f.File)
	}
	if drawing != "" {
		write(w, `<div role="img" aria-label="`)
		text(w, f.Alt)
		write(w, `">`, drawing, `</div>`)
	} else {
		write(w, `<img loading="lazy" src="`)
		text(w, f.Src)
		write(w, `" alt="`)
		text(w, f.Alt)
		write(w, `">`)
	}
	if f.Caption != "" {
		write(w, "<figcaption>")
		text(w, f.Caption)
		write(w, "</figcaption>")
	}
	write(w, "</figure>\n")
	return ast.WalkSkipChildren, nil
}

func (r *parts) fence(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		f := n.(*sheet.Fence)
		if f.Circuit != nil {
			write(w, wiring(f.Circuit, circuitNumber(n)))
		} else {
			write(w, r.book.listing(f), "\n")
		}
	}
	return ast.WalkSkipChildren, nil
}

func (r *parts) link(w util.BufWriter, source []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	l := n.(*ast.Link)
	if r.leadsToDraft(l) {
		return ast.WalkContinue, nil // the words alone; a finding tells the author
	}
	if !entering {
		write(w, "</a>")
		return ast.WalkContinue, nil
	}
	dest := pageLink(string(l.Destination))
	write(w, `<a href="`)
	if !gmhtml.IsDangerousURL([]byte(dest)) {
		text(w, string(util.URLEscape([]byte(dest), true)))
	}
	write(w, `"`)
	if len(l.Title) > 0 {
		write(w, ` title="`)
		gmhtml.DefaultWriter.Write(w, l.Title)
		write(w, `"`)
	}
	if strings.Contains(dest, "://") {
		write(w, ` rel="noreferrer"`)
	}
	write(w, ">")
	return ast.WalkContinue, nil
}

// leadsToDraft reports whether a link leads to a sheet that this edition
// leaves out.
func (r *parts) leadsToDraft(l *ast.Link) bool {
	if r.sheet == nil {
		return false
	}
	t := r.sheet.Resolve(string(l.Destination))
	return !t.Outside && path.Ext(t.File) == ".md" && r.book.Book.Sheet(strings.TrimSuffix(t.File, ".md")) == nil
}
