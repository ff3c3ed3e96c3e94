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

// readShop reads content/shop.yaml.
func readShop(src *finding.Source, report func(finding.Finding)) *Shop {
	s := &Shop{Source: src, Language: "en"}
	r := newYAMLReader(src, Span{0, len(src.Text())}, "shop", report)
	root := r.document()
	if root == nil {
		return s
	}
	r.mapping(root, map[string]func(*yaml.Node){
		"name":        func(n *yaml.Node) { s.Name = r.text(n) },
		"book":        func(n *yaml.Node) { s.Book = r.text(n) },
		"address":     func(n *yaml.Node) { s.Address = r.text(n) },
		"language":    func(n *yaml.Node) { s.Language = r.text(n) },
		"rate":        func(n *yaml.Node) { s.Rate = r.text(n) },
		"markup":      func(n *yaml.Node) { s.Markup = r.text(n) },
		"contingency": func(n *yaml.Node) { s.Contingency = r.text(n) },
		"tax":         func(n *yaml.Node) { s.Tax = r.text(n) },
	})
	if s.Name == "" || s.Book == "" {
		r.fault(root, "the shop has no name or its book none", "add lines name: ... and book: ...")
	}
	return s
}
