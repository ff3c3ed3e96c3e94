package find

// What a letter is, and its small form, is told by ranges here instead of the
// standard library's tables, which would weigh more in the browser than the
// rest of the search. Latin, Greek and Cyrillic are folded; what is neither a
// sign of these ranges nor a mark counts as a letter.

// signs are the ranges beyond ASCII that hold no letters: Latin-1 signs, times
// and division, combining marks, punctuation, currency, arrows, mathematics,
// drawing, the signs of Chinese and Japanese, what is no character or has no
// meaning of its own, full-width signs, pictures.
var signs = [...][2]rune{
	{0x80, 0xA9}, {0xAB, 0xB4}, {0xB6, 0xB9}, {0xBB, 0xBF}, {0xD7, 0xD7}, {0xF7, 0xF7},
	{0x2C2, 0x2C5}, {0x2D2, 0x2DF}, {0x300, 0x36F}, {0x37E, 0x37E}, {0x387, 0x387}, {0x482, 0x489},
	{0x2000, 0x2070}, {0x2072, 0x207E}, {0x2080, 0x208F}, {0x20A0, 0x2125}, {0x2127, 0x2129}, {0x212C, 0x2BFF},
	{0x2E00, 0x2E7F}, {0x3000, 0x3004}, {0x3008, 0x3030}, {0x30FB, 0x30FB}, {0xD800, 0xF8FF}, {0xFE00, 0xFE6F}, {0xFEFF, 0xFF0F},
	{0xFF1A, 0xFF20}, {0xFF3B, 0xFF40}, {0xFF5B, 0xFF65}, {0xFFE0, 0xFFFF}, {0x1F000, 0x1FBEF}, {0xE0000, 0x10FFFF},
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

// isLetter reports whether a rune is a letter; digits of other scripts count
// as letters.
func isLetter(r rune) bool {
	if r < 0x80 {
		return r|0x20 >= 'a' && r|0x20 <= 'z'
	}
	for i := range signs {
		if r >= signs[i][0] && r <= signs[i][1] {
			return false
		}
	}
	return true
}

func isWord(r rune) bool { return isDigit(r) || isLetter(r) }

// isMark reports whether a rune is a combining accent or the soft hyphen,
// which belong to the word around them and do not count.
func isMark(r rune) bool { return r >= 0x300 && r <= 0x36F || r == 0xAD }

// folds lists what accented letters and signs are searched as: the first word of
// a line stands for each letter of the second.
var folds = [...][2]string{
	{"a", "àáâãäåāăąǎÀÁÂÃÄÅĀĂĄǍ\u212b"}, {"c", "çćĉċčÇĆĈĊČ"}, {"d", "ďđðĎĐÐ"}, {"e", "èéêëēĕėęěÈÉÊËĒĔĖĘĚ"},
	{"g", "ĝğġģĜĞĠĢ"}, {"h", "ĥħĤĦ"}, {"i", "ìíîïĩīĭįıÌÍÎÏĨĪĬĮİ"}, {"j", "ĵĴ"}, {"k", "ķĶ\u212a"},
	{"l", "ĺļľŀłĹĻĽĿŁ"}, {"n", "ñńņňŋÑŃŅŇŊ"}, {"o", "òóôõöøōŏőÒÓÔÕÖØŌŎŐ"}, {"r", "ŕŗřŔŖŘ"},
	{"s", "śŝşšșŚŜŞŠȘ"}, {"t", "ţťŧțŢŤŦȚ"}, {"u", "ùúûüũūŭůűųÙÚÛÜŨŪŬŮŰŲµμΜ"}, {"w", "ŵŴ"},
	{"y", "ýÿŷÝŸŶ"}, {"z", "źżžŹŻŽ"}, {"ae", "æÆ"}, {"oe", "œŒ"}, {"ss", "ßẞ"}, {"th", "þÞ"},
	{"ohm", "ωΩ\u2126"}, // the last is the sign of its own
}

// lower gives the small form of a letter that is not in folds.
func lower(r rune) rune {
	switch {
	case r >= 0x391 && r <= 0x3AB || r >= 0x410 && r <= 0x42F: // Greek, Cyrillic
		return r + 0x20
	case r >= 0x400 && r <= 0x40F: // more Cyrillic
		return r + 0x50
	case r == 0x132, r >= 0x460 && r <= 0x4BF, r >= 0x1E00 && r <= 0x1EFF: // in pairs, more Latin likewise
		return r | 1
	}
	return r
}
