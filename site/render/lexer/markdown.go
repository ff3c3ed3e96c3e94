package lexer

import "github.com/alecthomas/chroma/v2"

// Markdown reads a sheet, front matter included.
var Markdown = chroma.MustNewLexer(
	&chroma.Config{Name: "Markdown", Aliases: []string{"markdown", "md"}},
	func() chroma.Rules {
		return chroma.Rules{
			"root": {
				{Pattern: `\A---\n`, Type: chroma.Comment, Mutator: chroma.Push("front")},
				{Pattern: `^#{1,6} [^\n]*`, Type: chroma.GenericHeading},
				{Pattern: "^```[^\n]*", Type: chroma.Comment},
				{Pattern: `\*\*[^*\n]+\*\*`, Type: chroma.GenericStrong},
				{Pattern: `^[ \t]*(>|[-*+]|\d+\.)(?=\s)`, Type: chroma.Keyword},
				{Pattern: `\[[ x]\]`, Type: chroma.Keyword},
				{Pattern: `(!?\[)([^\]\n]*)(\]\()([^)\n]*)(\))`, Type: chroma.ByGroups(
					chroma.Operator, chroma.LiteralString, chroma.Operator, chroma.NameTag, chroma.Operator)},
				{Pattern: "`[^`\n]+`", Type: chroma.LiteralString},
				{Pattern: `\w+`, Type: chroma.Text},
				{Pattern: `\s+|.`, Type: chroma.Text},
			},
			"front": append([]chroma.Rule{{Pattern: `^---[ ]*$`, Type: chroma.Comment, Mutator: chroma.Pop(1)}}, yamlRules(nil)...),
		}
	},
)
