package work

import (
	"strings"

	"baybook/site/check/english"
)

// addPart takes in the noun of a phrase: its last word.
func (w *Words) addPart(phrase string) {
	fields := strings.Fields(phrase)
	if len(fields) == 0 || strings.Contains(phrase, " + ") {
		return
	}
	for noun := range strings.SplitSeq(strings.TrimPrefix(fields[len(fields)-1], "="), "/") {
		for _, word := range english.Read(noun, w.stems).Words {
			if !notParts[word.Lower] {
				w.parts[word.Stem] = true
			}
		}
	}
}

// notParts are last words of phrases that name no part by themselves: "hold
// up", "back", "high voltage".
var notParts = map[string]bool{
	"air": true, "area": true, "back": true, "below": true, "between": true, "clean": true, "dc": true, "down": true, "dry": true, "dust": true,
	"edge": true, "end": true, "height": true, "level": true, "line": true, "live": true, "maker": true, "on": true, "orange": true, "part": true,
	"point": true, "position": true, "power": true, "row": true, "run": true, "section": true, "set": true, "setting": true, "side": true, "stand": true,
	"start": true, "system": true, "top": true, "under": true, "underneath": true, "unit": true, "up": true, "v": true, "volt": true, "voltage": true, "water": true,
}

// IsPart reports whether a stem is that of a noun that the lists call a thing
// or a tool.
func (w *Words) IsPart(stem string) bool { return w.parts[stem] }
