package lexer

import "github.com/alecthomas/chroma/v2"

// Shell reads what is typed at a prompt.
var Shell = chroma.MustNewLexer(
	&chroma.Config{Name: "Shell", Aliases: []string{"sh"}},
	func() chroma.Rules {
		return chroma.Rules{"root": {
			{Pattern: `(^|(?<=\s))#[^\n]*`, Type: chroma.Comment},
			{Pattern: `^\s*(\$ )?[\w./-]+`, Type: chroma.Keyword},
			{Pattern: `"(\\.|[^"\\])*"|'[^']*'`, Type: chroma.LiteralString},
			{Pattern: `(?<=\s)--?[\w-]+`, Type: chroma.NameAttribute},
			{Pattern: `[|&;<>]+`, Type: chroma.Operator},
			{Pattern: `\w+`, Type: chroma.Text},
			{Pattern: `\s+|.`, Type: chroma.Text},
		}}
	},
)
