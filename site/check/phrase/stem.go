package phrase

import (
	"strings"
	"sync"

	"github.com/kljensen/snowball/english"
)

// Stems remembers the stems of words, which a book repeats without end, and
// gives each stem a number of its own, by which stems are compared. The zero
// value is ready; any number of goroutines may share it. What is to be matched
// with each other has to be read with the same Stems.
type Stems struct {
	mu    sync.RWMutex
	words map[string]known
	ids   map[string]int32
}

// known is what is remembered of a word.
type known struct {
	lower, stem string
	id          int32
	counts      bool // a number in letters
}

// of gives what is known of a word.
func (s *Stems) of(word string, number bool) known {
	s.mu.RLock()
	k, ok := s.words[word]
	s.mu.RUnlock()
	if ok {
		return k
	}
	k.lower, k.stem = strings.Clone(word), word
	if !number {
		k.lower, k.stem = stemOf(word)
	}
	k.counts = numberWords[k.lower]
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.words == nil {
		s.words, s.ids = make(map[string]known), make(map[string]int32)
	}
	id, ok := s.ids[k.stem]
	if !ok {
		id = int32(len(s.ids)) + 1
		s.ids[strings.Clone(k.stem)] = id
	}
	k.id = id
	s.words[strings.Clone(word)] = k
	return k
}

func stemOf(word string) (lower, stem string) {
	lower = strings.ToLower(word)
	if s, ok := irregular(lower); ok {
		return lower, s
	}
	return lower, english.Stem(lower, true)
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
