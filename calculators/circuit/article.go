package circuit

import "strings"

// withArticle puts a or an before the word for a part: an alternator, a fuse.
func withArticle(word string) string {
	if word != "" && strings.IndexByte("aeiouAEIOUL", word[0]) >= 0 && (word[0] != 'L' || strings.HasPrefix(word, "LED")) {
		return "an " + word
	}
	return "a " + word
}
