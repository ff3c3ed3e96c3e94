package sheet

import (
	"baybook/site/finding"

	"go.yaml.in/yaml/v3"
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
	// Language is the ISO 639 code of the sheets' language.
	Language string
	// Rate, Markup, Contingency and Tax are the defaults of a job's price, as
	// the calculator job-price takes them.
	Rate, Markup, Contingency, Tax string
}

// shopFields are the keys of the shop's facts.
var shopFields = []field[Shop]{
	{"name", "Legal owner of the sheets (ISO 7200).", true, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Name = r.text(n) }},
	{"book", "What stands on the cover.", true, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Book = r.text(n) }},
	{"address", "Where the book is served from, without a closing slash; it goes into codes on paper.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Address = r.text(n) }},
	{"language", "Language of the sheets (ISO 639): en.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Language = r.text(n) }},
	{"rate", "Price of an hour that job prices start from, without a currency.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Rate = r.text(n) }},
	{"markup", "What is added to parts: 30%.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Markup = r.text(n) }},
	{"contingency", "What is added to labour: 15%.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Contingency = r.text(n) }},
	{"tax", "Tax on all: 8%.", false, oneText, func(r *yamlReader, n *yaml.Node, s *Shop) { s.Tax = r.text(n) }},
}

// readShop reads content/shop.yaml.
func readShop(src *finding.Source, report func(finding.Finding)) *Shop {
	s := &Shop{Source: src, Language: "en"}
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
