package english

import "strings"

// Words are the words that a shop can teach the checks: content/words.yaml.
type Words struct {
	// Sources name a source of numbers, letter for letter.
	Sources []string
	// Verbs are actions in their bare form, Harms what may happen to somebody.
	Verbs, Harms []string
	// Protections and Vague hold phrases.
	Protections []ProtectionWords
	Vague       []string
	// Stems lead irregular forms, in small letters, to their stem.
	Stems map[string]string
}

// ProtectionWords are the phrases that name one kind of protective equipment.
type ProtectionWords struct {
	What    string
	Phrases []string
}

// A Lexicon is Words made ready to be looked for. Nothing changes it once it
// is made, and any number of goroutines may share it.
type Lexicon struct {
	Verbs       map[string]bool
	Harms       map[string]bool // by stem
	Vague       *Set
	Protections []Protection
	// Faults are the phrases that could not be read, each in a sentence.
	Faults []string

	// sources are the names of sources, by their first byte.
	sources [256][]string
}

// A Protection is one kind of protective equipment, with the phrases that
// name it.
type Protection struct {
	What string
	*Set
}

// NewLexicon reads the words. The stems must be those that the texts are read
// with.
func NewLexicon(words *Words, stems *Stems) *Lexicon {
	l := &Lexicon{Verbs: make(map[string]bool), Harms: make(map[string]bool)}
	for _, v := range words.Verbs {
		l.Verbs[v] = true
	}
	for _, h := range words.Harms {
		for _, w := range Read(h, stems).Words {
			l.Harms[w.Stem] = true
		}
	}
	for _, name := range words.Sources {
		if name != "" {
			l.sources[name[0]] = append(l.sources[name[0]], name)
		}
	}
	l.Vague = l.set(words.Vague, stems)
	for _, p := range words.Protections {
		l.Protections = append(l.Protections, Protection{p.What, l.set(p.Phrases, stems)})
	}
	return l
}

// set makes a set of phrases and notes those that cannot be read.
func (l *Lexicon) set(phrases []string, stems *Stems) *Set {
	var list []Pattern
	for _, s := range phrases {
		p, msg := Parse(s, stems)
		if msg != "" {
			l.Faults = append(l.Faults, msg)
			continue
		}
		list = append(list, p)
	}
	return NewSet(list)
}

// Orders reports whether words are an order: they start with a verb in its
// bare form, with do not or never, or with an adverb before a verb.
func (l *Lexicon) Orders(words []Word) bool {
	for len(words) > 1 && IsAdverb(words[0].Lower) {
		words = words[1:]
	}
	if len(words) == 0 || NotVerb(words[0].Lower) {
		return false
	}
	first := words[0].Lower
	if len(words) > 1 && strings.HasSuffix(words[1].Lower, "ed") && words[1].Break == NoBreak && len(words[1].Lower) > 4 && (len(words) == 2 || !isNounAfter(words[2].Lower)) {
		return false // "Reverse selected with ..."
	}
	if subject(words) {
		return false
	}
	if l.Verbs[first] || strings.HasPrefix(first, "re") && l.Verbs[first[2:]] || strings.HasPrefix(first, "un") && l.Verbs[first[2:]] {
		return len(words) == 1 || !Finite(words[1].Lower) || words[1].Break > NoBreak
	}
	// An unknown word is taken for a verb where an object follows it at once.
	if len(words) < 2 || words[1].Break != NoBreak || strings.HasSuffix(first, "ing") || strings.HasSuffix(first, "s") {
		return false
	}
	switch words[1].Lower {
	case "this", "that", "these", "those":
		return false // "Glass that moves ..."
	}
	return Determines(words[1].Lower)
}

// IsOrder reports whether a clause is an order, a condition before it or not.
func (l *Lexicon) IsOrder(words []Word) bool {
	at, ok := Action(words)
	return ok && l.Orders(words[at:])
}

// NamesSource reports whether a text says where its numbers come from.
func (l *Lexicon) NamesSource(text string) bool {
	for i := range len(text) {
		for _, name := range l.sources[text[i]] {
			if strings.HasPrefix(text[i:], name) && (i == 0 || !isLetterOrDigit(text[i-1])) && endsName(text, i+len(name)) {
				return true
			}
		}
	}
	return false
}

// endsName reports whether a name that ends at a place ends there as a word: one
// in capitals does not go on with letters (EN, not ENERGY); one in small letters
// may have an ending (practices).
func endsName(text string, end int) bool {
	if end >= len(text) || !letter(text[end]) {
		return true
	}
	last := text[end-1]
	return last >= 'a' && last <= 'z' || last == '-'
}

func isLetterOrDigit(c byte) bool { return letter(c) || IsDigit(c) }
