package render

import (
	"encoding/json"
	"html/template"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"baybook/site/check/work"
	"baybook/site/sheet"
)

// BeforePage is the page that tells, for work without a sheet, what can hurt.
const BeforePage = "before.html"

// A Choice is an entry of a list of work, as the page offers it.
type Choice struct {
	Number       int
	Name, Choose string
}

// A Guard is something that the page tells where one of its conditions is met:
// the message of a hazard, what must come first, or what is never done.
type Guard struct {
	Word, Class string // signal word, and the same in lower case; empty for what is no message
	Title, Text string
	Avoid       string
	Sign        template.HTML // drawn by the theme
	When        string        // conditions in JSON: work.Sets
}

// beforeBody is what the page shows.
type beforeBody struct {
	Acts, Things, Tools, States []Choice
	Hazards, First, Never       []Guard
}

// Before makes the page "Before I do this": choose an act, places, tools and
// states, and read what guards them. It holds the whole register, so that it
// works offline and from a memory stick; the script only hides what is not met.
func (r *Renderer) Before() ([]byte, error) {
	l := &work.Lists{}
	if r.Book.Work != nil {
		l = r.Book.Work.Lists
	} else {
		l.Settle()
	}
	var body beforeBody
	for i, e := range l.Numbered() {
		c := Choice{i, strings.ReplaceAll(e.ID, "-", " "), e.Choose}
		list := map[work.Kind]*[]Choice{work.Act: &body.Acts, work.Thing: &body.Things, work.Tool: &body.Tools, work.State: &body.States}[e.Kind]
		*list = append(*list, c)
	}
	for _, list := range []*[]Choice{&body.Acts, &body.Things, &body.Tools, &body.States} {
		slices.SortStableFunc(*list, func(a, b Choice) int { return strings.Compare(a.Name, b.Name) })
	}
	if err := r.beforeGuards(l, &body); err != nil {
		return nil, err
	}
	return r.print("before.html", r.newPage("desk", BeforePage, "Before I do this", body))
}

// beforeGuards fills in what the page tells, the most serious first.
func (r *Renderer) beforeGuards(l *work.Lists, body *beforeBody) error {
	conditions := func(list []work.When) (string, error) {
		data, err := json.Marshal(l.SetsOf(list))
		return string(data), err
	}
	var hazards []*sheet.Hazard
	if r.Book.Register != nil {
		hazards = slices.Clone(r.Book.Register.Hazards)
	}
	slices.SortStableFunc(hazards, func(a, b *sheet.Hazard) int { return int(b.Least) - int(a.Least) })
	for _, h := range hazards {
		when, err := conditions(h.When)
		if err != nil {
			return err
		}
		body.Hazards = append(body.Hazards, Guard{
			Word: h.Least.String(), Class: strings.ToLower(h.Least.String()), Title: h.Title, Text: h.Harm, Avoid: h.Avoid, Sign: template.HTML(r.signs[h.Sign]), When: when,
		})
	}
	for i := range l.Nevers {
		n := &l.Nevers[i]
		when, err := conditions(n.When)
		if err != nil {
			return err
		}
		if when != "null" {
			body.Never = append(body.Never, Guard{Title: n.Instead, When: when})
		}
	}
	for i := range l.Needs {
		n := &l.Needs[i]
		when, err := conditions(n.When)
		if err != nil {
			return err
		}
		body.First = append(body.First, Guard{Title: sentenceCase(n.Do), Text: n.Why, When: when})
	}
	return nil
}

// sentenceCase begins a phrase with a capital letter.
func sentenceCase(s string) string {
	r, n := utf8.DecodeRuneInString(s)
	return string(unicode.ToUpper(r)) + s[n:]
}
