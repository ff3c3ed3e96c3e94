// Package lexer holds the languages that a sheet's listings may be in: the
// usual ones of a book about sheets, and the trade's own. Each is a value in
// the list.
package lexer

import "github.com/alecthomas/chroma/v2"

// All are the lexers, in the order in which the book's guide shows them.
var All = []chroma.Lexer{
	YAML,
	Markdown,
	Shell,
	JSON,
	Circuit,
	Pins,
	BusLog,
}

// Names lists every name that a fence may carry for a listing, "text" for
// one that is not highlighted.
func Names() []string {
	names := []string{"text"}
	for _, l := range All {
		names = append(names, l.Config().Aliases...)
	}
	return names
}
