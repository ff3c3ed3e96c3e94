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

// AppendEscaped adds text for use between tags or in an attribute in double
// quotes, in HTML and in XML. A control character that neither allows, and a
// byte that is not UTF-8, becomes U+FFFD. Everything that the core and the
// builder write by hand goes through here.
func AppendEscaped(b []byte, text string) []byte {
	from := 0
	for i, r := range text {
		by := ""
		switch {
		case r == '&':
			by = "&amp;"
		case r == '<':
			by = "&lt;"
		case r == '>':
			by = "&gt;"
		case r == '"':
			by = "&#34;"
		case r < ' ' && r != '\t' && r != '\n' && r != '\r' || r == 0x7F:
			by = "\uFFFD"
		case r == '\uFFFD' && !strings.HasPrefix(text[i:], "\uFFFD"):
			by = "\uFFFD" // a byte that is not UTF-8
		default:
			continue
		}
		b = append(append(b, text[from:i]...), by...)
		from = i + 1
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
