package draw

// An ink is what stands for a color on a screen.
type ink struct{ name, ink string }

// wireInks are inks for the letters of IEC 60757.
var wireInks = [...]ink{
	{"BK", "#1a1a1a"}, {"BN", "#7b4a21"}, {"RD", "#d32222"}, {"OG", "#ef7d00"}, {"YE", "#f5d000"},
	{"GN", "#1e8a3c"}, {"BU", "#1f5fbf"}, {"VT", "#7d3f98"}, {"GY", "#8a8f94"}, {"WH", "#ffffff"},
	{"PK", "#f2a0b5"}, {"GD", "#c9a227"}, {"TQ", "#18a8a8"}, {"SR", "#c4c9cd"},
}

// fuseInks are inks for the body colors of ISO 8820-3 by their names.
var fuseInks = [...]ink{
	{"black", "#1a1a1a"}, {"grey", "#8a8f94"}, {"violet", "#7d3f98"}, {"pink", "#f2a0b5"}, {"tan", "#d2a679"},
	{"brown", "#7b4a21"}, {"red", "#d32222"}, {"blue", "#3f8fdc"}, {"yellow", "#f5d000"}, {"natural", "#f4efe2"},
	{"green", "#1e8a3c"}, {"blue-green", "#18a8a8"}, {"orange", "#ef7d00"}, {"tan or brown", "#a9764a"}, {"clear", "#f4f7f9"},
}

// inkOf finds the ink of a color, "" for none.
func inkOf(inks []ink, name string) string {
	for _, i := range inks {
		if i.name == name {
			return i.ink
		}
	}
	return ""
}
