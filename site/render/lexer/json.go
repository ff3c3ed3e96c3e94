package lexer

import "github.com/alecthomas/chroma/v2"

// JSON reads a record or a calculator's answer.
var JSON = chroma.MustNewLexer(
	&chroma.Config{Name: "JSON", Aliases: []string{"json"}},
	func() chroma.Rules {
		return chroma.Rules{"root": {
			{Pattern: `"(\\.|[^"\\])*"(?=\s*:)`, Type: chroma.NameTag},
			{Pattern: `"(\\.|[^"\\])*"`, Type: chroma.LiteralString},
			{Pattern: `-?\d+(\.\d+)?([eE][+-]?\d+)?`, Type: chroma.LiteralNumber},
			{Pattern: `\b(true|false|null)\b`, Type: chroma.Keyword},
			{Pattern: `[{}\[\],:]`, Type: chroma.Operator},
			{Pattern: `\s+|.`, Type: chroma.Text},
		}}
	},
)
