package finding

import "unicode"

// Hides reports whether a character is not seen but changes how text reads:
// zero width, soft hyphens, direction marks and overrides, tags, controls.
func Hides(c rune) bool {
	switch {
	case c == '\n' || c == '\r' || c == '\t':
		return false
	case unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c):
		return true
	}
	return c == 0xAD || c == 0x180E || c >= 0x200B && c <= 0x200D || c >= 0x2060 && c <= 0x2064 || c == 0xFEFF || c >= 0xE0000 && c <= 0xE007F
}
