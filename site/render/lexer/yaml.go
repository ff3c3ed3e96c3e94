package lexer

import "github.com/alecthomas/chroma/v2"

// YAML reads front matter and the book's data files.
var YAML = chroma.MustNewLexer(
	&chroma.Config{Name: "YAML", Aliases: []string{"yaml"}},
	func() chroma.Rules { return chroma.Rules{"root": yamlRules(nil)} },
)

// yamlRules are YAML's rules, own words put before them.
func yamlRules(own []chroma.Rule) []chroma.Rule {
	rules := []chroma.Rule{
		{Pattern: `#[^\n]*`, Type: chroma.Comment},
		{Pattern: `^(---|\.\.\.)[ ]*$`, Type: chroma.Comment},
	}
	rules = append(rules, own...)
	return append(rules,
		chroma.Rule{Pattern: `[A-Za-z_][\w .+-]*(?=:(\s|$))`, Type: chroma.NameTag},
		chroma.Rule{Pattern: `"(\\.|[^"\\\n])*"|'[^'\n]*'`, Type: chroma.LiteralString},
		chroma.Rule{Pattern: `\b\d{4}-\d{2}-\d{2}\b`, Type: chroma.LiteralNumber},
		chroma.Rule{Pattern: quantity, Type: chroma.LiteralNumber},
		chroma.Rule{Pattern: `[\[\]{},:>|-]`, Type: chroma.Operator},
		chroma.Rule{Pattern: `\w+`, Type: chroma.Text},
		chroma.Rule{Pattern: `\s+|.`, Type: chroma.Text},
	)
}

// quantity is a number with a unit behind it, where it has one.
const quantity = `-?\b\d+(\.\d+)?(/0)?\s?(AWG|mm2|mohm|ohm|mm|cm|mA|mV|kW|uF|mH|Hz|kHz|Ah|Nm|ms|min|m|A|V|W|C|F|h|s|%)?\b`
