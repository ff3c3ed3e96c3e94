package phrase

import (
	"strings"
	"sync"

	"github.com/kljensen/snowball/english"
)

// Stems remembers the stems of words, which a book repeats without end. The
// zero value is ready; any number of goroutines may share it.
type Stems struct {
	known sync.Map // string → stemmed
}

type stemmed struct{ lower, stem string }

// of gives a word in small letters, and its stem.
func (s *Stems) of(word string, number bool) (lower, stem string) {
	if number {
		return word, word
	}
	if s == nil {
		k := stemOf(word)
		return k.lower, k.stem
	}
	if k, ok := s.known.Load(word); ok {
		known := k.(stemmed)
		return known.lower, known.stem
	}
	k := stemOf(word)
	s.known.Store(strings.Clone(word), k)
	return k.lower, k.stem
}

func stemOf(word string) stemmed {
	lower := strings.ToLower(word)
	if s, ok := irregular(lower); ok {
		return stemmed{lower, s}
	}
	return stemmed{lower, english.Stem(lower, true)}
}

// irregulars are forms that no rule leads back to their verb or noun, and
// pairs that the stemmer would make one though they are two things. Sorted by
// the first.
var irregulars = map[string]string{
	"blew": "blow", "blown": "blow", "bore": "bore", "bored": "bore", "boring": "bore",
	"broke": "break", "broken": "break", "charger": "charger", "chargers": "charger",
	"cleaner": "cleaner", "cleaners": "cleaner", "cutting": "cut", "driven": "drive",
	"driver": "driver", "drivers": "driver", "drove": "drive", "feed": "feed", "feeds": "feed",
	"feet": "foot", "grinding": "grind", "ground": "ground", "grounded": "ground", "grounds": "ground",
	"held": "hold", "lain": "lie", "laid": "lay", "left": "left", "lying": "lie",
	"mounting": "mount", "primer": "primer", "primers": "primer", "ran": "run", "running": "run",
	"rose": "rise", "sank": "sink", "shrank": "shrink", "shrunk": "shrink", "shutting": "shut",
	"solvent": "solvent", "solvents": "solvent", "spare": "spare", "stood": "stand",
	"taken": "take", "took": "take", "tinned": "tin", "tinning": "tin", "tinted": "tint",
	"torn": "tear", "wiper": "wiper", "wipers": "wiper", "wiring": "wiring", "wound": "wound",
	"heater": "heater", "heaters": "heater", "tapping": "tap", "locker": "locker",
	"router": "router", "tracker": "tracker", "trackers": "tracker", "sander": "sander",
	"grinder": "grinder", "grinders": "grinder", "lighter": "lighter", "header": "header",
	"insulated": "insulated", "insulation": "insulation", "earthing": "earth",
	"calibration": "calibrate", "initialisation": "initialise", "initialise": "initialise", "initialised": "initialise",
	"ventilation": "ventilate", "extractor": "extract", "extraction": "extract", "calibrates": "calibrate",
	"calibrated": "calibrate", "calibrate": "calibrate", "ventilate": "ventilate", "ventilated": "ventilate",
}

func irregular(lower string) (string, bool) {
	s, ok := irregulars[lower]
	return s, ok
}
