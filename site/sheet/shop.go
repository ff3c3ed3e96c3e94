package sheet

import (
	"io/fs"
	"net/url"
	"path"
	"slices"
	"strconv"
	"strings"

	"baybook/calculators/calc"
	"baybook/calculators/shop"
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
	"golang.org/x/text/language"
)

// A Shop is the facts of the bay that keeps the book: content/shop.yaml.
type Shop struct {
	Source *finding.Source
	// Name is the legal owner of the sheets (ISO 7200).
	Name string
	// Book is what the book is called on its cover.
	Book string
	// Address is where the book is served from, without a closing slash; empty
	// where it has no lasting address. It goes into QR codes on paper.
	Address string
	// Postal, Phone and Logo stand on quotes. Logo is a file of the book.
	Postal, Phone, Logo string
	logoAt              Span
	// QuoteDays is how many days a quoted price holds.
	QuoteDays int
	// OwnApproval allows the owner of a sheet to approve it.
	OwnApproval bool
	// Language is the BCP 47 tag of the sheets' language.
	Language   string
	LanguageAt Span
	// Rate, Markup, Contingency and Tax are the defaults of a job's price, as
	// the calculator job-price takes them.
	Rate, Markup, Contingency, Tax string
	// Currency is the sign or ISO 4217 code of the shop's prices; it may stand
	// in front of Rate instead.
	Currency string
}

// PriceCurrency is the currency of the shop's prices: its own line's, or that in
// front of its rate; "" where neither says one.
func (s *Shop) PriceCurrency() string {
	if q, msg := calc.ParseQuantity(s.Rate); s.Currency == "" && s.Rate != "" && msg == "" {
		return q.Currency
	}
	return s.Currency
}

// prices are the inputs of job-price that the shop sets.
func (s *Shop) prices() []calc.Pair {
	rate := s.Rate
	if rate != "" && rate[0] >= '0' && rate[0] <= '9' {
		rate = s.Currency + rate
	}
	var pairs []calc.Pair
	for _, p := range [...]calc.Pair{{Key: "rate", Value: rate}, {Key: "markup", Value: s.Markup}, {Key: "contingency", Value: s.Contingency}, {Key: "tax", Value: s.Tax}} {
		if p.Value != "" {
			pairs = append(pairs, p)
		}
	}
	return pairs
}

// Calculators is a list of calculators in which job-price starts from the
// shop's own rate, markup, contingency, tax and currency.
func (s *Shop) Calculators(list []*calc.Calculator) []*calc.Calculator {
	own := slices.Clone(list)
	for i, c := range own {
		if c.Name == shop.JobPrice.Name {
			own[i], _ = c.WithDefaults(s.prices(), "this shop's") // what cannot be read is reported with the file
		}
	}
	return own
}

// price reads a price or a share as the named input of job-price takes it.
func price(r *yamlReader, n *yaml.Node, input string) string {
	text := r.text(n)
	if _, msg := shop.JobPrice.Input(input).Read(text); text != "" && msg != "" {
		r.fault(n, msg, "write it as job-price takes it: rate: \"95\" or \"$95\", markup: 30%")
		return ""
	}
	return text
}

// currency reads a currency by trying it on a price.
func currency(r *yamlReader, n *yaml.Node) string {
	text := r.text(n)
	if q, msg := calc.ParseQuantity(text + "1"); text != "" && (msg != "" || q.Currency != text) {
		r.fault(n, text+" is not a currency", "write its sign ($, €, £, ¥) or its three capital letters (CHF)")
		return ""
	}
	return text
}

// usualQuoteDays is how long a quoted price holds where the shop says nothing.
const usualQuoteDays = 30

// quoteDays reads how many days a quote holds.
func quoteDays(r *yamlReader, n *yaml.Node) int {
	text := r.text(n)
	days, err := strconv.Atoi(text)
	if err != nil || days < 1 || days > 365 {
		r.fault(n, strconv.Quote(text)+" is not a number of days from 1 to 365", "write quote_days: 30")
		return usualQuoteDays
	}
	return days
}

// logoEndings are the kinds of file that a logo may be.
var logoEndings = []string{".svg", ".png", ".jpg", ".jpeg"}

// logo reads the path of the shop's mark. Whether it is there is checked when
// the folder is known.
func logo(r *yamlReader, n *yaml.Node) string {
	text := r.text(n)
	if text != "" && (!fs.ValidPath(text) || !slices.Contains(logoEndings, strings.ToLower(path.Ext(text)))) {
		r.fault(n, strconv.Quote(text)+" is not an SVG, PNG or JPEG file of this folder", "write its path from the folder of shop.yaml: logo: shop/mark.svg")
		return ""
	}
	return text
}

// logo reports a mark of the shop's that is not there.
func (l *loader) logo() {
	our := l.book.Shop
	if our == nil || our.Logo == "" || l.book.Drawings[our.Logo] != nil || l.book.Files[our.Logo] != nil {
		return
	}
	f := our.Source.At(our.logoAt.Start, our.logoAt.End)
	f.Rule, f.Message, f.Do = "shop", "there is no file "+our.Logo, "put it into the content folder, or take the line out"
	l.report(f)
	our.Logo = ""
}

// longestAddress is how many bytes the book's address may have: with the path
// of a page behind it, its code on paper can still be scanned.
const longestAddress = 120

// address reads where the book is served from.
func address(r *yamlReader, n *yaml.Node) string {
	text := strings.TrimSuffix(r.text(n), "/")
	if text == "" {
		return ""
	}
	u, err := url.Parse(text)
	switch {
	case err != nil || u.Scheme != "https" && u.Scheme != "http" || u.Host == "":
		r.fault(n, strconv.Quote(text)+" is not an address of the web", "write it whole, such as https://book.example.org/bay, or take the line out")
	case u.RawQuery != "" || u.Fragment != "" || u.User != nil:
		r.fault(n, strconv.Quote(text)+" holds more than a host and a path", "take out what stands behind ? or #, and any name before @")
	case len(text) > longestAddress:
		r.fault(n, "the address has "+strconv.Itoa(len(text))+" bytes, too many for a code that is scanned off paper", "use one of at most "+strconv.Itoa(longestAddress))
	default:
		return text
	}
	return ""
}

// languageTag reads the tag of a language; a wrong one leaves the sheets
// English.
func languageTag(r *yamlReader, n *yaml.Node) string {
	text := r.text(n)
	if _, err := language.Parse(text); text != "" && err != nil {
		r.fault(n, strconv.Quote(text)+" is not the tag of a language", "write it as BCP 47 has it: en, en-US, de, fr-CA")
	} else if text != "" {
		return text
	}
	return "en"
}

// LoadShop reads the shop's facts alone from the folder of a book. The list
// holds what is wrong in them; the error says that there are none.
func LoadShop(fsys fs.FS) (*Shop, finding.List, error) {
	content, err := readFile(fsys, ShopFile)
	if err != nil {
		return nil, nil, err
	}
	var list finding.List
	report := func(f finding.Finding) { list = append(list, f) }
	source := finding.NewSource(ShopFile, content)
	if !readable(source, report) {
		return &Shop{Source: source}, list, nil
	}
	return readShop(source, report), list, nil
}

// shopFields are the keys of the shop's facts.
var shopFields = []field[Shop]{
	{"name", "Legal owner of the sheets (ISO 7200).", true, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Name = r.text(n) }},
	{"book", "What stands on the cover.", true, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Book = r.text(n) }},
	{"address", "Where the book is served from, without a closing slash; it goes into codes on paper.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Address = address(r, n) }},
	{"language", "Language of the sheets (BCP 47): en, en-US.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Language, s.LanguageAt = languageTag(r, n), r.span(n) }},
	{"postal", "The shop's postal address, as it stands on quotes.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Postal = r.text(n) }},
	{"phone", "The shop's phone, as it stands on quotes.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Phone = r.text(n) }},
	{"logo", "The shop's mark on quotes: an SVG, PNG or JPEG file of this folder.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Logo, s.logoAt = logo(r, n), r.span(n) }},
	{"quote_days", "How many days a quoted price holds: 30.", false, form{Type: "integer"}, func(r *yamlReader, n *yaml.Node, s *Shop) { s.QuoteDays = quoteDays(r, n) }},
	{"own_approval", "true where the owner of a sheet may approve it.", false, form{Type: "boolean"}, func(r *yamlReader, n *yaml.Node, s *Shop) { s.OwnApproval = r.oneOf(n, "true", "false") == "true" }},
	{"rate", "Price of an hour that job prices start from: 95, or $95.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Rate = price(r, n, "rate") }},
	{"markup", "What is added to parts: 30%.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Markup = price(r, n, "markup") }},
	{"contingency", "What is added to labor: 15%.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Contingency = price(r, n, "contingency") }},
	{"tax", "Tax on all: 8%.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Tax = price(r, n, "tax") }},
	{"currency", "Sign or ISO 4217 code that prices are shown with: $, EUR.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Currency = currency(r, n) }},
}

// readShop reads content/shop.yaml.
func readShop(src *finding.Source, report func(finding.Finding)) *Shop {
	s := &Shop{Source: src, Language: "en", QuoteDays: usualQuoteDays}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "shop", report)
	root := r.document()
	if root == nil {
		return s
	}
	readFields(&r, root, s, shopFields)
	if s.Name == "" || s.Book == "" {
		r.fault(root, "the shop has no name or its book none", "add lines name: ... and book: ...")
	}
	return s
}
