// Package begin is the book that a shop starts from: the hazard register, a
// few words of the glossary, the shop's facts, one complete sheet with a drawing
// and a circuit, and a job with its price. All of it passes every check.
package begin

import (
	"embed"
	"io/fs"
)

//go:embed book
var files embed.FS

// Book is the folder of the book.
func Book() fs.FS {
	book, err := fs.Sub(files, "book")
	if err != nil {
		panic(err) // the folder is compiled in
	}
	return book
}
