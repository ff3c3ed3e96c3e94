package circuit

import "testing"

func TestArticle(t *testing.T) {
	for word, want := range map[string]string{"alternator": "an alternator", "amplifier": "an amplifier", "fuse": "a fuse", "load": "a load", "LED string": "an LED string"} {
		if got := withArticle(word); got != want {
			t.Errorf("%s: %s", word, got)
		}
	}
}
