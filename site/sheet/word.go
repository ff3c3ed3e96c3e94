package sheet

// A Word is a signal word of ANSI Z535.6, in ascending order of what may
// happen.
type Word uint8

const (
	NoWord  Word = iota
	Notice       // practice not related to injury
	Caution      // could cause minor or moderate injury
	Warning      // could cause death or serious injury
	Danger       // will cause death or serious injury
)

// words are the signal words as they are written.
var words = [...]string{"", "NOTICE", "CAUTION", "WARNING", "DANGER"}

// String is the word as it is written.
func (w Word) String() string { return words[w] }

// ParseWord reads a signal word; false for any other.
func ParseWord(s string) (Word, bool) {
	for w := Notice; w <= Danger; w++ {
		if words[w] == s {
			return w, true
		}
	}
	return NoWord, false
}
