package publish

import (
	"github.com/tdewolff/minify/v2"
	"github.com/tdewolff/minify/v2/html"
)

// A Minifier makes pages smaller without changing what they show. It serves
// any number of goroutines.
type Minifier struct{ m *minify.M }

// NewMinifier makes one. Drawings in the page are left alone: [Drawing] made
// them small, and the core writes its own that way. Tags and quotes are kept:
// leaving them out saves a hundredth and makes the page harder to check.
func NewMinifier() *Minifier {
	m := minify.New()
	m.Add("text/html", &html.Minifier{KeepDocumentTags: true, KeepEndTags: true, KeepQuotes: true, KeepDefaultAttrVals: true})
	return &Minifier{m}
}

// HTML makes a page smaller.
func (m *Minifier) HTML(page []byte) ([]byte, error) { return m.m.Bytes("text/html", page) }
