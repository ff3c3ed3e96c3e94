package render

import (
	"strconv"

	"baybook/site/sheet"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/util"
)

// LimitsPage is the page of the register of limits.
const LimitsPage = "limits.html"

// A NumberNote says of one limit where its number comes from.
type NumberNote struct {
	// Number counts the notes of a page; it is 0 on the register's own.
	Number   int
	ID       string
	What     string
	Limit    string
	From     string
	Standing string
	Note     string
	// Computed is the page of the calculator that makes the number, filled in;
	// empty where it is typed.
	Computed string
	// UsedBy are the sheets that judge by it, on the register's page.
	UsedBy []AreaSheet
}

// standings say the words of the register as a reader should see them.
var standings = map[string]string{
	"read": "read", "restated": "read as others restate it",
	"common practice": "common practice, no source", "memory": "from memory",
}

// numberNote makes the note of a limit for a page with that way to the root.
func (r *Renderer) numberNote(l *sheet.Limit, number int, root string) NumberNote {
	n := NumberNote{
		Number: number, ID: l.ID, What: l.What, Limit: l.String(), From: l.From, Standing: standings[l.Standing], Note: l.Note,
	}
	if c := l.Computation; c != nil {
		n.Computed = root + CalculatorPage(c.Calculator) + "#calculator-1?" + c.Query()
	}
	return n
}

// Limits renders the register of limits, with the sheets that use each row.
func (r *Renderer) Limits() ([]byte, error) {
	var notes []NumberNote
	for _, l := range r.Book.Limits.Limits {
		note := r.numberNote(l, 0, "")
		for _, s := range r.Book.Sheets {
			if s.UsesLimit(l.ID) {
				note.UsedBy = append(note.UsedBy, AreaSheet{Sheet: s, Page: PageOf(s)})
			}
		}
		notes = append(notes, note)
	}
	return r.print("limits.html", r.newPage("list", LimitsPage, "Limits", notes))
}

// limitLink writes a limit in running text.
func (r *parts) limitLink(w util.BufWriter, _ []byte, n ast.Node, entering bool) (ast.WalkStatus, error) {
	if entering {
		l := n.(*sheet.LimitLink)
		text(w, l.Words)
		r.mark(w, l.Limit)
	}
	return ast.WalkSkipChildren, nil
}

// mark leads from a number to its note at the foot of the page.
func (r *parts) mark(w util.BufWriter, l *sheet.Limit) {
	for i, have := range r.limits {
		if have == l {
			number := strconv.Itoa(i + 1)
			write(w, `<a class="source" href="#number-`, number, `" aria-label="`, number, `, where this number comes from"><sup>`, number, `</sup></a>`)
		}
	}
}
