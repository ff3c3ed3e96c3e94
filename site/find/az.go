package find

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Letter is one heading of the A to Z page and what stands under it.
type Letter struct {
	Name    string // A to Z, another alphabet's letter, or 0–9 for all that begins otherwise
	Entries []Entry
}

// Entry is one line of the A to Z page. Its Text is what the reader looks for: a
// title, or another name of the document, which is then not the same as Title.
type Entry struct {
	Text    string
	Title   string
	Number  string
	Address string
	Kind    Kind
}

// otherLetter heads what begins with no letter; it stands first.
const otherLetter = "0–9"

// AZ lists the sheets and calculators by title and by their further words, for a
// page that finds without scripts. Letters that nothing begins with are left out.
func AZ(docs []Doc) []Letter {
	type keyed struct {
		key string
		Entry
	}
	var all []keyed
	for i := range docs {
		d := &docs[i]
		if d.Kind != Sheet && d.Kind != Calculator {
			continue
		}
		texts := append([]string{d.Title}, d.Words...)
		var keys []string
		for _, text := range texts {
			key := sortKey(text)
			if key == "" || slices.Contains(keys, key) {
				continue
			}
			keys = append(keys, key)
			all = append(all, keyed{key, Entry{strings.TrimSpace(text), d.Title, d.Number, d.Address, d.Kind}})
		}
	}
	slices.SortStableFunc(all, func(a, b keyed) int {
		return cmp.Or(otherFirst(a.key, b.key), cmp.Compare(a.key, b.key), cmp.Compare(a.Number, b.Number), cmp.Compare(a.Address, b.Address))
	})
	var letters []Letter
	for _, e := range all {
		name := initial(e.key)
		if n := len(letters); n == 0 || letters[n-1].Name != name {
			letters = append(letters, Letter{Name: name})
		}
		last := &letters[len(letters)-1]
		last.Entries = append(last.Entries, e.Entry)
	}
	return letters
}

// sortKey gives a text's words without case and accents, one space between them.
func sortKey(text string) string {
	var b []byte
	s := scanner{text: text}
	for s.next() {
		if len(b) > 0 {
			b = append(b, ' ')
		}
		b = append(b, s.word...)
	}
	return string(b)
}

// otherFirst orders what begins with no letter before all that does.
func otherFirst(a, b string) int {
	aOther, bOther := initial(a) == otherLetter, initial(b) == otherLetter
	if aOther == bOther {
		return 0
	}
	if aOther {
		return -1
	}
	return 1
}

// initial gives the heading that a key stands under.
func initial(key string) string {
	r, _ := utf8.DecodeRuneInString(key)
	if !unicode.IsLetter(r) {
		return otherLetter
	}
	return strings.ToUpper(string(r))
}
