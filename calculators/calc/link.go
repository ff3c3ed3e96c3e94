package calc

import "strings"

// A Link is a mention of another calculator in a reason.
type Link struct {
	// Words stand in the reason.
	Words string
	// Calculator is the other one's name and Query its inputs, filled in.
	Calculator, Query string
}

// unlink takes the links out of a reason, written as in a sheet:
//
//	[Wire and fuse for a new feed](calc:feed-plan?current=8 A&length=4 m)
//
// The words stay, and the links are kept for those who can show them.
func (r *Result) unlink(text string) string {
	const between = "](calc:"
	for {
		middle := strings.Index(text, between)
		if middle < 0 {
			return text
		}
		open := strings.LastIndexByte(text[:middle], '[')
		end := middle + strings.IndexByte(text[middle:], ')')
		words := text[open+1 : middle]
		name, query, _ := strings.Cut(text[middle+len(between):end], "?")
		r.Links = append(r.Links, Link{words, name, encoded(query)})
		text = text[:open] + words + text[end+1:]
	}
}

// encoded writes a query of plain texts as an address has it.
func encoded(query string) string {
	var pairs []Pair
	for more := query != ""; more; {
		var part string
		part, query, more = strings.Cut(query, "&")
		key, value, _ := strings.Cut(part, "=")
		pairs = append(pairs, Pair{Key: key, Value: value})
	}
	return FormatQuery(pairs)
}

// appendReasons writes the reasons as HTML, with links to the calculators that
// they point at; root leads from the page to the top of the site.
func appendReasons(b []byte, r *Result, root string) []byte {
	if len(r.Reasons) == 0 {
		return b
	}
	b = append(b, `<ul class="reasons">`...)
	for _, reason := range r.Reasons {
		b = append(b, `<li>`...)
		for i := range r.Links {
			l := &r.Links[i]
			if before, after, ok := strings.Cut(reason, l.Words); ok {
				b = AppendEscaped(b, before)
				page := "calculators/" + l.Calculator + ".html#calculator-1?" + l.Query
				b = AppendForm(b, `<a href="%" data-page="%">%</a>`, root+page, page, l.Words)
				reason = after
				break
			}
		}
		b = append(AppendEscaped(b, reason), `</li>`...)
	}
	return append(b, `</ul>`...)
}
