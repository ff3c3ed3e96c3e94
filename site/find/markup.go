package find

import (
	"strings"

	"baybook/calculators/calc"
)

// AppendMarkup adds the answers as HTML: an ordered list of links. Root leads
// from the page that shows them to the site's root, such as "../". Found words
// stand in mark elements. Classes, for the style sheet: found (the list),
// found-sheet, found-section, found-step, found-calculator (its items),
// found-number, found-title and found-text (in the link), found-note (what is
// said in words, before the list or instead of it). All text is escaped.
func AppendMarkup(b []byte, hits []Hit, root string) []byte {
	if len(hits) == 0 {
		return append(b, `<p class="found-note">Nothing found. Try fewer words, only the start of a word, `+
			`or another name for the thing; or type a sheet’s number, with a step if you like: GR-02 step 4. `+
			`The A to Z page lists everything.</p>`...)
	}
	if hits[0].Partial {
		b = append(b, `<p class="found-note">No page has all of these words; these have some of them.</p>`...)
	}
	b = append(b, `<ol class="found">`...)
	for i := range hits {
		b = appendHit(b, &hits[i], root)
	}
	return append(b, `</ol>`...)
}

// kindNames are the class names and, where the reader needs it, the word for a
// kind of document.
var kindNames = [...]struct{ class, label string }{
	Sheet:      {"found-sheet", ""},
	Section:    {"found-section", ""},
	Step:       {"found-step", "step"},
	Calculator: {"found-calculator", "calculator"},
}

func appendHit(b []byte, h *Hit, root string) []byte {
	kind := &kindNames[h.Kind&kindMask]
	b = calc.AppendForm(b, `<li class="%"><a href="%">`, kind.class, linkTo(root, h.Address))
	label := h.Number
	if kind.label != "" && (h.Kind != Step || h.Step != "") {
		if label != "" {
			label += " "
		}
		label += kind.label
		if h.Step != "" {
			label += " " + h.Step
		}
	}
	if label != "" {
		b = calc.AppendForm(b, `<span class="found-number">%</span> `, label)
	}
	b = appendMarked(append(b, `<span class="found-title">`...), h.Title, h.TitleMarks)
	if h.Excerpt != "" {
		b = appendMarked(append(b, `</span> <span class="found-text">`...), h.Excerpt, h.ExcerptMarks)
	}
	return append(b, `</span></a></li>`...)
}

// linkTo joins root and address. Where the address would stand alone and begin
// like a scheme, it is kept relative.
func linkTo(root, address string) string {
	if page, _, _ := strings.Cut(address, "/"); root == "" && strings.Contains(page, ":") {
		root = "./"
	}
	return root + address
}

// appendMarked adds a text with its spans in mark elements. Spans that do not lie
// in the text are left out.
func appendMarked(b []byte, text string, spans []Span) []byte {
	at := 0
	for _, s := range spans {
		if s.Start < at || s.End <= s.Start || s.End > len(text) {
			continue
		}
		b = calc.AppendForm(b, `%<mark>%</mark>`, text[at:s.Start], text[s.Start:s.End])
		at = s.End
	}
	return calc.AppendEscaped(b, text[at:])
}
