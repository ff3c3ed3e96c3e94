package sheet

import (
	"strings"
	"time"

	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
)

// InterfaceFile is the file of the content folder that holds the words of the
// pages in the shop's own language.
const InterfaceFile = "interface.yaml"

// An Interface is the words that pages say beside the sheets' own, in one
// language, and how it writes dates and prices.
type Interface struct {
	Source *finding.Source
	// Date is how a day is written: {day}, {month} and {year} stand for its
	// parts. Months are the names of the months; without them all parts are
	// numbers of two or four digits.
	Date   string
	Months []string
	// Price is how a price is written, of {currency} and {amount}. Point stands
	// before the cents, Group between thousands.
	Price        string
	Point, Group string
	Words        []InterfaceWord
}

// An InterfaceWord is one word or sentence of the pages, and what stands for it.
type InterfaceWord struct {
	Say, As string
	Span    Span
}

var interfaceFields = []field[Interface]{
	{"date", "How a day is written: {day} {month} {year}.", false, oneText, func(r *yamlReader, n *yaml.Node, i *Interface) {
		i.Date = r.withParts(n, "{day}", "{month}", "{year}")
	}},
	{"months", "The names of the twelve months; without them months are numbers.", false, manyTexts, func(r *yamlReader, n *yaml.Node, i *Interface) {
		if i.Months = r.list(n); len(i.Months) != 12 {
			r.fault(n, "a year has twelve months", "name all twelve, or leave the line out: months are numbers then")
			i.Months = nil
		}
	}},
	{"price", "How a price is written: {currency}{amount}.", false, oneText, func(r *yamlReader, n *yaml.Node, i *Interface) {
		i.Price = r.withParts(n, "{amount}", "{currency}")
	}},
	{"point", "What stands before the cents: a point or a comma.", false, oneOf(".", ","), func(r *yamlReader, n *yaml.Node, i *Interface) { i.Point = r.oneOf(n, ".", ",") }},
	{"group", "What stands between thousands: a comma, a point, a space or none.", false, oneOf(",", ".", "space", "none"), func(r *yamlReader, n *yaml.Node, i *Interface) {
		i.Group = r.oneOf(n, ",", ".", "space", "none")
	}},
	{"words", "The words of the pages.", false, listOf(object(interfaceWordFields)), func(r *yamlReader, n *yaml.Node, i *Interface) {
		for _, item := range r.items(n) {
			w := InterfaceWord{Span: r.span(item)}
			readFields(r, item, &w, interfaceWordFields)
			i.Words = append(i.Words, w)
		}
	}},
}

var interfaceWordFields = []field[InterfaceWord]{
	{"say", "What the pages say in American English.", true, oneText, func(r *yamlReader, n *yaml.Node, w *InterfaceWord) { w.Say = r.text(n) }},
	{"as", "What they say instead.", false, oneText, func(r *yamlReader, n *yaml.Node, w *InterfaceWord) { w.As = r.text(n) }},
}

// withParts reads a text in which each of some parts stands once.
func (r *yamlReader) withParts(n *yaml.Node, parts ...string) string {
	text := r.text(n)
	for _, p := range parts {
		if text != "" && strings.Count(text, p) != 1 {
			r.fault(n, p+" does not stand here once", "write all of "+strings.Join(parts, ", ")+", each once, in the order of your language")
			return ""
		}
	}
	return text
}

// ReadInterface reads the words of one language.
func ReadInterface(src *finding.Source, report func(finding.Finding)) *Interface {
	i := &Interface{Source: src}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "interface", report)
	if root := r.document(); root != nil {
		readFields(&r, root, i, interfaceFields)
	}
	return i
}

// Day writes a day in the way of the language.
func (i *Interface) Day(t time.Time) string {
	if i.Date == "" {
		return t.Format(time.DateOnly)
	}
	day, month := t.Format("02"), t.Format("01")
	if i.Months != nil {
		day, month = t.Format("2"), i.Months[t.Month()-1]
	}
	return strings.NewReplacer("{day}", day, "{month}", month, "{year}", t.Format("2006")).Replace(i.Date)
}

// Amount writes a price that stands in digits and a point, such as -1234.50, in
// the way of the language. A code of a currency is parted from its amount.
func (i *Interface) Amount(currency, digits string) string {
	minus, digits := "", digits
	if rest, ok := strings.CutPrefix(digits, "-"); ok {
		minus, digits = "-", rest
	}
	whole, cents, hasCents := strings.Cut(digits, ".")
	group := map[string]string{"": "", "none": "", "space": "\u202f", ",": ",", ".": "."}[i.Group]
	for at := len(whole) - 3; at > 0; at -= 3 {
		whole = whole[:at] + group + whole[at:]
	}
	if hasCents {
		point := i.Point
		if point == "" {
			point = "."
		}
		whole += point + cents
	}
	if currency == "" || i.Price == "" {
		if currency != "" && currency[0] >= 'A' && currency[0] <= 'Z' {
			currency += "\u00a0"
		}
		return minus + currency + whole
	}
	pattern := i.Price
	if currency[0] >= 'A' && currency[0] <= 'Z' {
		pattern = strings.ReplaceAll(pattern, "{currency}{amount}", "{currency}\u00a0{amount}")
	}
	return minus + strings.NewReplacer("{currency}", currency, "{amount}", whole, " ", "\u00a0").Replace(pattern)
}
