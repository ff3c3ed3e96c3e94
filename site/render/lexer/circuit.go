package lexer

import "github.com/alecthomas/chroma/v2"

// Circuit reads a wiring drawing: YAML whose keys are parts of a circuit, with
// terminal numbers of DIN 72552 and color letters of IEC 60757.
var Circuit = chroma.MustNewLexer(
	&chroma.Config{Name: "Circuit", Aliases: []string{"circuit"}},
	func() chroma.Rules {
		return chroma.Rules{"root": yamlRules([]chroma.Rule{
			{Pattern: `\b(title|states|limits|wrong|sources?|alternators?|converters?|diodes?|fuses?|switch(es)?|relays?|connectors?|loads?|leds|amplifiers?|speakers?|splices?|grounds?|wires?|body|links?)(?=:)`, Type: chroma.Keyword},
			{Pattern: `\b(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR)(BK|BN|RD|OG|YE|GN|BU|VT|GY|WH|PK|GD|TQ|SR)?\b`, Type: chroma.NameConstant},
			{Pattern: `(?<=[.:/ ])(15|30|31|31b|50|58|85|86|87a?|87b|75)\b(?!\s?(A|V|W|m|%))`, Type: chroma.NameConstant},
		})}
	},
)
