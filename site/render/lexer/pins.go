package lexer

import "github.com/alecthomas/chroma/v2"

// Pins reads a connector's pin list, a line a cavity:
//
//	A4  BU/YE  0.75 mm2  permanent 12 V
//
// cavity, color (IEC 60757), size, function.
var Pins = chroma.MustNewLexer(
	&chroma.Config{Name: "Pin list", Aliases: []string{"pins"}},
	func() chroma.Rules {
		return chroma.Rules{"root": {
			{Pattern: `#[^\n]*`, Type: chroma.Comment},
			{Pattern: `^[ \t]*connector\b[^\n]*`, Type: chroma.GenericHeading},
			{Pattern: `^[ \t]*[A-Za-z]?\d+(?=\s)`, Type: chroma.Keyword},
			{Pattern: `\b(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR)([/]?(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR))?\b`, Type: chroma.NameConstant},
			{Pattern: quantity, Type: chroma.LiteralNumber},
			{Pattern: `\b(empty|not used)\b`, Type: chroma.Comment},
			{Pattern: `\w+`, Type: chroma.Text},
			{Pattern: `\s+|.`, Type: chroma.Text},
		}}
	},
)
