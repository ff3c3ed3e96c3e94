package calc

import "strings"

// AppendForm adds a piece of markup in which each % stands for the next of
// the texts, escaped. One form is easier to read than its pieces, and far
// less code for the browser to fetch.
func AppendForm(b []byte, form string, texts ...string) []byte {
	for {
		at := strings.IndexByte(form, '%')
		if at < 0 {
			return append(b, form...)
		}
		b = AppendEscaped(append(b, form[:at]...), texts[0])
		form, texts = form[at+1:], texts[1:]
	}
}

// AppendEscaped adds text with the characters escaped that mean something in
// HTML and XML, attributes included.
func AppendEscaped(b []byte, text string) []byte {
	return appendReplaced(b, text, `&<>"`, "&amp;", "&lt;", "&gt;", "&#34;")
}

// appendReplaced adds text with each of some bytes replaced.
func appendReplaced(b []byte, text, these string, by ...string) []byte {
	from := 0
	for i := range len(text) {
		if k := strings.IndexByte(these, text[i]); k >= 0 {
			b = append(append(b, text[from:i]...), by[k]...)
			from = i + 1
		}
	}
	return append(b, text[from:]...)
}

// appendItems writes a list of texts, and nothing for an empty one.
func appendItems(b []byte, class string, items []string) []byte {
	if len(items) == 0 {
		return b
	}
	b = AppendForm(b, `<ul class="%">`, class)
	for _, item := range items {
		b = AppendForm(b, `<li>%</li>`, item)
	}
	return append(b, `</ul>`...)
}
