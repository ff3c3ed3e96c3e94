package english

import (
	"maps"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/kljensen/snowball/english"
)

// Stems remembers the words of a book, which repeats them without end: each
// spelling is taken apart once, and each stem has a number of its own, by
// which stems are compared. The zero value is ready; any number of goroutines
// may share it. Texts and phrases that are matched with each other must be
// read with the same Stems.
type Stems struct {
	// settled is read without a lock and never changed; what is met first goes
	// to fresh, and moves over when that has grown.
	settled atomic.Pointer[map[string]*Form]

	// irregular leads forms that no rule leads back to their stem.
	irregular map[string]string

	mu    sync.Mutex
	fresh map[string]*Form
	ids   map[string]int32
}

// NewStems makes stems with forms, in small letters, that no rule leads back to
// their stem, or that a rule would lead to that of another thing.
func NewStems(irregular map[string]string) *Stems { return &Stems{irregular: irregular} }

// A Form is a word as it is spelled, and what is known of it.
type Form struct {
	// Text is the word as it stands, Lower the same in small letters, Stem what
	// it shares with its other forms.
	Text, Lower, Stem string
	// Number is true for a number in digits.
	Number bool

	counts bool  // a number in letters
	id     int32 // of the stem
}

// of gives the form of a word.
func (s *Stems) of(word string) *Form {
	if settled := s.settled.Load(); settled != nil {
		if f, ok := (*settled)[word]; ok {
			return f
		}
	}
	return s.meet(word)
}

// meet looks among the fresh words, and takes a new one in.
func (s *Stems) meet(word string) *Form {
	s.mu.Lock()
	defer s.mu.Unlock()
	if f, ok := s.fresh[word]; ok {
		return f
	}
	if s.ids == nil {
		s.ids = make(map[string]int32)
	}
	if s.fresh == nil {
		s.fresh = make(map[string]*Form)
	}
	if settled := s.settled.Load(); settled != nil {
		if f, ok := (*settled)[word]; ok {
			return f // moved over in the meantime
		}
	}
	f := &Form{Text: strings.Clone(word), Number: isDigit(rune(word[0]))}
	f.Lower, f.Stem = f.Text, f.Text
	if !f.Number {
		f.Lower, f.Stem = s.stemOf(f.Text)
	}
	f.counts = numberWords[f.Lower]
	id, ok := s.ids[f.Stem]
	if !ok {
		id = int32(len(s.ids)) + 1
		s.ids[f.Stem] = id
	}
	f.id = id
	s.fresh[f.Text] = f
	s.settle()
	return f
}

// settle moves the fresh words over once there are many compared with the
// settled ones, so that each is copied a few times at most.
func (s *Stems) settle() {
	const fewest = 64
	old := s.settled.Load()
	n := 0
	if old != nil {
		n = len(*old)
	}
	if len(s.fresh) < max(fewest, n/4) {
		return
	}
	all := make(map[string]*Form, n+len(s.fresh))
	if old != nil {
		maps.Copy(all, *old)
	}
	maps.Copy(all, s.fresh)
	s.settled.Store(&all)
	s.fresh = nil
}

// stemOf gives a word in small letters, and its stem.
func (s *Stems) stemOf(word string) (lower, stem string) {
	lower = strings.ToLower(word)
	if stem, ok := s.irregular[lower]; ok {
		return lower, stem
	}
	return lower, english.Stem(lower, true)
}
