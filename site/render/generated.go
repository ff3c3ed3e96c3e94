package render

import (
	"slices"
	"strings"

	"baybook/calculators/calc"
	"baybook/site/sheet"
)

// A generated listing stands for a table or a list made from the book's own data, so
// that nothing is typed twice: a fence whose language is its name, empty
// inside.
type generated struct {
	name   string
	markup func(r *Renderer) string
}

// generatedListings are all of them.
var generatedListings = []generated{
	{"glossary", (*Renderer).glossaryEntries},
	{"hazard-register", (*Renderer).registerEntries},
	{"hazard-matrix", (*Renderer).registerMatrix},
	{"waivers", (*Renderer).waiverTable},
	{"needs", (*Renderer).needEntries},
	{"never-orders", (*Renderer).neverEntries},
	{"units", (*Renderer).unitTable},
	{"calculator-list", (*Renderer).calculatorTable},
	{"circuit-keys", func(*Renderer) string { return circuitKeys() }},
	{"program-version", func(r *Renderer) string { return `<p class="program">Baybook ` + escape(r.Program) + `</p>` }},
}

// Generated lists the names of what the book makes by itself.
func Generated() []string {
	var names []string
	for _, g := range generatedListings {
		names = append(names, g.name)
	}
	return names
}

// generate is what a fence stands for; false where it stands for nothing.
func (r *Renderer) generate(language string) (string, bool) {
	for _, g := range generatedListings {
		if g.name == language {
			return g.markup(r), true
		}
	}
	return "", false
}

// tableMarkup writes a table with a caption; cells are escaped.
func tableMarkup(caption string, heads []string, rows [][]string) string {
	var b strings.Builder
	b.WriteString(`<div class="wide" tabindex="0" role="region" aria-label="Table: ` + escape(caption) + `"><table><caption>` + escape(caption) + `</caption><thead><tr>`)
	for _, h := range heads {
		b.WriteString(`<th scope="col">` + escape(h) + `</th>`)
	}
	b.WriteString(`</tr></thead><tbody>`)
	for _, row := range rows {
		b.WriteString(`<tr>`)
		for i, cell := range row {
			if i == 0 {
				b.WriteString(`<th scope="row">` + escape(cell) + `</th>`)
				continue
			}
			b.WriteString(`<td>` + escape(cell) + `</td>`)
		}
		b.WriteString(`</tr>`)
	}
	b.WriteString(`</tbody></table></div>`)
	return b.String()
}

// An entry is a term with what is told of it, each under a heading of its own
// or none. A phone has no room for these as columns.
type entry struct {
	term  string
	lines [][2]string
}

// entriesMarkup writes entries; texts are escaped.
func entriesMarkup(entries []entry) string {
	var b strings.Builder
	b.WriteString(`<dl class="entries">`)
	for _, e := range entries {
		b.WriteString(`<div><dt>` + escape(e.term) + `</dt>`)
		for _, line := range e.lines {
			if line[1] == "" {
				continue
			}
			b.WriteString(`<dd>`)
			if line[0] != "" {
				b.WriteString(`<b>` + escape(line[0]) + `</b> `)
			}
			b.WriteString(escape(line[1]) + `</dd>`)
		}
		b.WriteString(`</div>`)
	}
	b.WriteString(`</dl>`)
	return b.String()
}

func (r *Renderer) glossaryEntries() string {
	var entries []entry
	for _, t := range r.Book.Glossary.Terms {
		names := merge(merge(nil, t.Also), t.Not)
		entries = append(entries, entry{t.Name, [][2]string{{"", t.Meaning}, {"Also called", strings.Join(names, ", ")}}})
	}
	slices.SortFunc(entries, func(a, b entry) int { return strings.Compare(strings.ToLower(a.term), strings.ToLower(b.term)) })
	return entriesMarkup(entries)
}

func (r *Renderer) registerEntries() string {
	var entries []entry
	for _, h := range r.Book.Register.Hazards {
		harm := "property"
		if h.Injury {
			harm = "injury"
		}
		var says []string
		for _, s := range h.Say {
			says = append(says, s.What)
		}
		entries = append(entries, entry{h.Title, [][2]string{
			{"Least word", h.Least.String() + ", " + harm},
			{"Harm", h.Harm},
			{"Avoid", h.Avoid},
			{"Sign", h.Sign},
			{"Shown by", strings.Join(h.Shows.Steps, ", ")},
			{"Must be said", strings.Join(says, "; ")},
		}})
	}
	return entriesMarkup(entries)
}

// registerMatrix is the matrix as a safety reviewer signs it: one row for each
// condition of each hazard.
func (r *Renderer) registerMatrix() string {
	var rows [][]string
	for _, h := range r.Book.Register.Hazards {
		for _, w := range h.When {
			things := slices.Concat(w.On, w.At)
			for _, t := range w.Reach {
				things = append(things, t+" in reach")
			}
			thing := strings.Join(things, ", ")
			if len(w.Beside) > 0 {
				thing += " beside " + strings.Join(w.Beside, ", ")
			}
			state := strings.Join(w.State, ", ")
			if len(w.Also) > 0 {
				state += " and " + strings.Join(w.Also, ", ")
			}
			rows = append(rows, []string{h.Least.String() + ": " + h.Title, strings.Join(w.Act, ", "), thing, strings.Join(w.With, ", "), state, strings.Join(w.Without, ", "), ""})
		}
	}
	return tableMarkup("What brings each hazard", []string{"Hazard", "Act", "Thing", "Tool", "State", "Not with", "Signed"}, rows)
}

func (r *Renderer) unitTable() string {
	var rows [][]string
	for d := calc.Length; d <= calc.ArealMass; d++ {
		var symbols []string
		for _, u := range calc.UnitsOf(d) {
			symbols = append(symbols, u.Symbol)
		}
		what := strings.TrimPrefix(strings.TrimPrefix(d.String(), "an "), "a ")
		rows = append(rows, []string{strings.ToUpper(what[:1]) + what[1:], strings.Join(symbols, "  ")})
	}
	return tableMarkup("Units that the calculators read", []string{"Quantity", "Written"}, rows)
}

func (r *Renderer) calculatorTable() string {
	var rows [][]string
	for _, c := range r.Calculators {
		rows = append(rows, []string{c.Name, c.Question, c.Title})
	}
	return tableMarkup("Calculators", []string{"Name in a link", "Question", "Title"}, rows)
}

// listing is a fence's markup: a generated table, or the code highlighted.
func (r *Renderer) listing(f *sheet.Fence) string {
	if table, ok := r.generate(f.Language); ok {
		return table
	}
	return `<pre class="listing" tabindex="0"><code>` + r.code.markup(f.Language, f.Code) + `</code></pre>`
}
