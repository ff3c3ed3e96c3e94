package render

import (
	"html/template"
	"slices"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/find"
	"baybook/site/sheet"
)

// An Area is a folder of the book with its sheets.
type Area struct {
	Name  string
	Title string
	// Figure is the area's drawing, empty where it has none.
	Figure template.HTML
	Sheets []AreaSheet
}

// An AreaSheet is one sheet in a list.
type AreaSheet struct {
	Sheet       *sheet.Sheet
	Page        string
	Kind, Skill string
}

// Areas groups the book's sheets.
func (r *Renderer) Areas(root string) []Area {
	byName := make(map[string]*Area)
	var areas []*Area
	for _, listed := range r.Book.Areas.Areas {
		a := &Area{Name: listed.Folder, Title: listed.Title}
		if r.Figures != nil && listed.Figure != "" {
			a.Figure = template.HTML(r.Figures(listed.Figure))
		}
		byName[a.Name] = a
		areas = append(areas, a)
	}
	for _, s := range r.Book.Sheets {
		a := byName[s.Area()]
		if a == nil {
			a = &Area{Name: s.Area(), Title: s.Area()}
			if a.Name == "." {
				a.Title = "Sheets"
			}
			byName[s.Area()] = a
			areas = append(areas, a)
		}
		a.Sheets = append(a.Sheets, AreaSheet{Sheet: s, Page: root + PageOf(s), Kind: kindTitles[s.Front.Kind], Skill: skillTitles[s.Front.Skill]})
	}
	var filled []Area
	for _, a := range areas {
		slices.SortStableFunc(a.Sheets, func(x, y AreaSheet) int { return strings.Compare(x.Sheet.Front.Number, y.Sheet.Front.Number) })
		if len(a.Sheets) > 0 {
			filled = append(filled, *a)
		}
	}
	return filled
}

// Cover renders the first page: the way to everything.
func (r *Renderer) Cover() ([]byte, error) {
	body := coverBody{Areas: r.Areas("")}
	if v := r.Book.Areas.Vehicle; r.Figures != nil && v != "" && len(r.Book.Areas.Places) > 0 {
		body.Vehicle, body.Places = template.HTML(r.Figures(v)), r.places()
	}
	page := r.newPage("cover", "index.html", r.Book.Shop.Book, body)
	return r.print("cover.html", page)
}

// AZ renders the list that finds without scripts.
func (r *Renderer) AZ(docs []find.Doc) ([]byte, error) {
	return r.print("az.html", r.newPage("list", "a-z.html", "A to Z", find.AZ(docs)))
}

// groups splits the list of calculators by the headings of areas.yaml.
func (r *Renderer) groups() []calculatorGroup {
	var groups []calculatorGroup
	for _, c := range r.Calculators {
		for _, heading := range r.Book.Areas.Headings {
			if heading.From == c.Name {
				groups = append(groups, calculatorGroup{Title: heading.Title})
			}
		}
		if len(groups) == 0 {
			groups = append(groups, calculatorGroup{Title: "Calculators"})
		}
		last := &groups[len(groups)-1]
		last.Calculators = append(last.Calculators, c)
	}
	return groups
}

// calculatorGroup is the calculators of one trade.
type calculatorGroup struct {
	Title       string
	Calculators []*calc.Calculator
}

// CalculatorList renders the page that groups the calculators by the
// question a tech asks.
func (r *Renderer) CalculatorList() ([]byte, error) {
	return r.print("calculators.html", r.newPage("list", "calculators.html", "Calculators", r.groups()))
}

// calculatorBody is what a calculator's own page shows.
type calculatorBody struct {
	*calc.Calculator
	Form    template.HTML
	Working []string
	Given   []calc.Value
	UsedBy  []AreaSheet
}

// Calculator renders a calculator's own page, with its defaults worked through.
func (r *Renderer) Calculator(c *calc.Calculator) ([]byte, error) {
	values, result, problems := c.Answer(nil)
	if len(problems) > 0 {
		return nil, problems[0]
	}
	body := calculatorBody{Calculator: c, Working: result.Working}
	body.Form = template.HTML(calculatorMarkup(calculatorForm{
		calculator: c, values: values, result: result, number: 1, heading: c.Question, level: 2, root: "../", help: true,
	}))
	for _, s := range r.Book.Sheets {
		if uses(s, c) {
			body.UsedBy = append(body.UsedBy, AreaSheet{Sheet: s, Page: "../" + PageOf(s)})
		}
	}
	page := r.newPage("calculator", CalculatorPage(c), c.Title, body)
	page.About = shortened(c.Doc)
	return r.print("calculator.html", page)
}

// uses reports whether a sheet computes with a calculator.
func uses(s *sheet.Sheet, c *calc.Calculator) bool {
	return slices.ContainsFunc(s.Computations(), func(of *sheet.Computation) bool { return of.Calculator == c })
}
