// Package render turns sheets and calculators into pages. It does no I/O: the
// theme's templates and the book come in, bytes go out.
package render

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"baybook/calculators/calc"
	"baybook/site/check"
	"baybook/site/sheet"
)

// Assets are the paths, from the site's root, of what every page refers to.
// They carry a hash of their content, so a page never meets another edition's.
type Assets struct {
	// Script runs before the reader touches anything, Interactive answers a touch,
	// StudyRecord is for the study and record pages alone. Pages is the style
	// of the cover and the record, Desk what wide screens add, Print that of paper.
	Style, InteractiveStyle, Pages, Desk, Print, Script, Interactive, StudyRecord string
	// Core and Index are the WebAssembly core and the search index; CoreScript
	// and IndexScript hold the same for pages opened from a folder, where
	// browsers forbid a fetch.
	Core, Index, CoreScript, IndexScript string
}

// A Renderer makes the pages of one book. It serves any number of goroutines.
type Renderer struct {
	Book        *sheet.Book
	Calculators []*calc.Calculator
	Assets      Assets
	// Program is the version of the program, in one line, as pages tell it.
	Program string
	// Figures gives a figure's drawing, ready to stand in a page, or "" where
	// the figure is a photograph.
	Figures func(file string) string
	// Hazards gives what a check found that a sheet shows; nil looks again.
	Hazards func(*sheet.Sheet) []check.ShownHazard
	// Messages gives what the reader of a sheet is told; nil works it out again.
	Messages func(*sheet.Sheet) *check.Messages
	// Changes are the recorded changes of each sheet by its file, the newest first.
	Changes map[string][]check.Change
	// Lead marks what the build wrote, with its reason.
	Lead   bool
	pages  *template.Template
	speech *speech
	signs  map[string]string
	code   *highlighter
	// neighbors holds every sheet's, found when first asked for.
	neighbors func() map[string]Neighbors
}

// NewRenderer prepares the templates found in the theme.
func NewRenderer(theme fs.FS, book *sheet.Book, calculators []*calc.Calculator, assets Assets) (*Renderer, error) {
	r := &Renderer{Book: book, Calculators: calculators, Assets: assets}
	var err error
	if r.speech, err = newSpeech(theme, book); err != nil {
		return nil, fmt.Errorf("the theme's words: %w", err)
	}
	if r.pages, err = parsePages(theme, r.speech); err != nil {
		return nil, fmt.Errorf("the theme's templates: %w", err)
	}
	r.speech.translate(r.pages)
	if r.signs, err = signs(theme); err != nil {
		return nil, fmt.Errorf("the theme's signs: %w", err)
	}
	r.code = newHighlighter()
	r.neighbors = sync.OnceValue(r.findNeighbors)
	return r, nil
}

// parsePages reads the templates, which write days and prices as a language does.
func parsePages(theme fs.FS, in *speech) (*template.Template, error) {
	return template.New("").Funcs(template.FuncMap{
		"lower": strings.ToLower,
		"plus":  func(a, b int) int { return a + b },
		"day":   in.day, "price": in.price, "say": in.say,
	}).ParseFS(theme, "templates/*.html")
}

// sortedTemplates are the names of all templates.
func sortedTemplates(pages *template.Template) []string {
	var names []string
	for _, t := range pages.Templates() {
		names = append(names, t.Name())
	}
	slices.Sort(names)
	return names
}

// A page is what the layout needs of every page.
type page struct {
	Root  string // "" or "../": the way to the site's root
	Kind  string // sheet, calculator, list: what scripts and styles go by
	Path  string // of the page, from the root
	Title string
	// About is what the page is for, in a sentence, for lists of pages.
	About  string
	Book   string
	Owner  string
	Lang   string
	Assets Assets
	// Program made the page: its name and version.
	Program string
	Body    any
	// Sheet is set on the page of a sheet alone.
	Sheet *sheet.Sheet
}

// newPage fills in what pages share.
func (r *Renderer) newPage(kind, at, title string, body any) page {
	return page{
		Root: rootFrom(at), Kind: kind, Path: at, Title: r.speech.say(title), About: title,
		Book: r.Book.Shop.Book, Owner: r.Book.Shop.Name, Lang: r.Book.Shop.Language,
		Assets: r.Assets, Program: r.Program, Body: body,
	}
}

// print runs a page through its template and the layout.
func (r *Renderer) print(name string, data page) ([]byte, error) {
	var body bytes.Buffer
	if err := r.pages.ExecuteTemplate(&body, name, data); err != nil {
		return nil, fmt.Errorf("%s: %w", data.Path, err)
	}
	data.Body = template.HTML(body.Bytes())
	var out bytes.Buffer
	if err := r.pages.ExecuteTemplate(&out, "layout.html", data); err != nil {
		return nil, fmt.Errorf("%s: %w", data.Path, err)
	}
	return out.Bytes(), nil
}

// shortened cuts a text behind its first sentence, or at a word.
func shortened(text string) string {
	const most = 155
	text = strings.Join(strings.Fields(text), " ")
	if end := strings.Index(text, ". "); end > 0 && end < most {
		return text[:end+1]
	}
	if len(text) <= most {
		return text
	}
	return text[:strings.LastIndexByte(text[:most], ' ')] + "…"
}

// PageOf is the path of a sheet's page.
func PageOf(s *sheet.Sheet) string { return s.Path + ".html" }

// CalculatorPage is the path of a calculator's page.
func CalculatorPage(c *calc.Calculator) string { return "calculators/" + c.Name + ".html" }

// rootFrom is the way from a page to the site's root: "" or "../".
func rootFrom(page string) string { return strings.Repeat("../", strings.Count(page, "/")) }

// relative turns a path from the site's root into one from a page.
func relative(from, to string) string {
	return rootFrom(from) + to
}

// pageLink rewrites a link as a sheet has it, to another sheet's file, into
// one to its page. Links that leave the site stay as they are.
func pageLink(dest string) string {
	before, fragment, has := strings.Cut(dest, "#")
	if strings.Contains(before, ":") || path.Ext(before) != ".md" {
		return dest
	}
	link := strings.TrimSuffix(before, ".md") + ".html"
	if has {
		link += "#" + fragment
	}
	return link
}
