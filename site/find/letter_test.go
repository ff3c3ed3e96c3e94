package find

import (
	"testing"
	"unicode"
)

// TestLetters compares the ranges with the tables of the Unicode standard, as
// the standard library has them, for the scripts that are folded and for
// signs.
func TestLetters(t *testing.T) {
	for r := rune(0); r < 0x530; r++ {
		if isMark(r) || unicode.Is(unicode.M, r) || !unicode.IsPrint(r) {
			continue
		}
		if got, want := isLetter(r), unicode.IsLetter(r); got != want && r != 0x375 && r != 0x384 && r != 0x385 && r != 0x3F6 && (r < 0x2E5 || r > 0x2FF) {
			t.Errorf("%q (%U) is a letter: %v, want %v", r, r, got, want)
		}
	}
	for r := rune(0x2000); r < 0x2BFF; r++ {
		if !unicode.IsLetter(r) && isLetter(r) && unicode.IsPrint(r) {
			t.Errorf("%q (%U) is no letter", r, r)
		}
	}
	for _, r := range "、。「」〜！？（）・￥😀🔧⚡✓\ufffd\ufeff\ufe0f" {
		if isLetter(r) {
			t.Errorf("%q (%U) is no letter", r, r)
		}
	}
	for _, r := range "漢かカ한عאकกÅK" {
		if !isLetter(r) {
			t.Errorf("%q (%U) is a letter", r, r)
		}
	}
}

// TestFolding compares capital letters with their small forms.
func TestFolding(t *testing.T) {
	for r := rune(0x41); r < 0x1F00; r++ {
		latin := r < 0x180 || r >= 0x1E00 && r != 0x1E9E
		greek := r >= 0x391 && r < 0x3AC
		cyrillic := r >= 0x400 && r < 0x4C0
		if !unicode.IsUpper(r) || !latin && !greek && !cyrillic {
			continue
		}
		if got, want := appendFolded(nil, r), appendFolded(nil, unicode.ToLower(r)); string(got) != string(want) {
			t.Errorf("%q (%U) folds to %q, want %q", r, r, got, want)
		}
	}
}
