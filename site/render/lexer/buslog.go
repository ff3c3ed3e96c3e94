package lexer

import "github.com/alecthomas/chroma/v2"

// BusLog reads a capture of a data bus, a line a message:
//
//	0.0132  3D1  8  00 4F 12 00 00 00 A0 1C  ; reverse selected
//
// seconds, identifier, length, bytes in hexadecimal, remark.
var BusLog = chroma.MustNewLexer(
	&chroma.Config{Name: "Bus capture", Aliases: []string{"buslog"}},
	func() chroma.Rules {
		return chroma.Rules{"root": {
			{Pattern: `[;#][^\n]*`, Type: chroma.Comment},
			{Pattern: `^\s*\d+\.\d+`, Type: chroma.LiteralNumber},
			{Pattern: `\b[0-9A-Fa-f]{3}\b|\b[0-9A-Fa-f]{8}\b`, Type: chroma.Keyword},
			{Pattern: `\b[0-9A-Fa-f]{2}\b`, Type: chroma.LiteralString},
			{Pattern: `\b(error|ack|rtr|wake|sleep)\b`, Type: chroma.NameTag},
			{Pattern: `\w+`, Type: chroma.Text},
			{Pattern: `\s+|.`, Type: chroma.Text},
		}}
	},
)
