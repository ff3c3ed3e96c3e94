package find

import (
	"slices"
	"strings"
)

// The places of a document where a word can stand, as bits of a posting.
const (
	inTitle = 1 << iota
	inWords // further words, the number, the area
	inText
	placeBits = 3
	placeMask = 1<<placeBits - 1
)

// keptText is how many bytes of a document's text are kept for the excerpt: about
// a step's sentence and a half. It is what most of the index consists of.
const keptText = 112

// maxPhrase is how many words a phrase of the glossary may have.
const maxPhrase = 4

// Build makes the index of a book. Documents are answered in the order given
// when nothing else tells them apart. Each list of synonyms holds words and
// phrases that mean the same in the trade; a word may stand in several lists.
func Build(docs []Doc, synonyms [][]string) *Index {
	names := readSynonyms(synonyms)
	b := builder{words: map[string]int{}, tokens: map[string]token{}, phrases: map[string]bool{}, ends: map[string]bool{}}
	for _, n := range names {
		if at := strings.LastIndexByte(n.phrase, ' '); at >= 0 {
			b.phrases[n.phrase] = true
			b.ends[n.phrase[at+1:]] = true
		}
	}
	for i := range docs {
		b.add(i, &docs[i])
	}
	x, err := Decode(b.encode(docs, names))
	if err != nil {
		panic("find: the index that was just built is refused: " + err.Error())
	}
	return x
}

// builder gathers which words stand in which documents.
type builder struct {
	words   map[string]int // place in posts
	posts   [][]uint32     // of a word: document << placeBits | places, rising
	tokens  map[string]token
	phrases map[string]bool
	ends    map[string]bool // the last words of the phrases
	recent  []string        // the last words of the text being read, at most maxPhrase
}

// A token is what is known of a word as texts write it. A book repeats its
// words, so each is taken to its singular once.
type token struct {
	word string // in the singular; "" for a stop word
	post int    // place in posts
	ends bool   // a phrase may end here
}

func (b *builder) token(written []byte) token {
	if t, known := b.tokens[string(written)]; known {
		return t
	}
	var t token
	raw := string(written)
	if !isStop(raw) {
		t.word = singular(raw)
		t.post, t.ends = b.place(t.word), b.ends[t.word]
	}
	b.tokens[raw] = t
	return t
}

// add files the words of one document.
func (b *builder) add(i int, d *Doc) {
	if d.Kind != Step {
		b.text(i, d.Title, inTitle) // a step's title is its sheet's
	}
	if d.Kind == Sheet {
		b.text(i, d.Area, inWords)
		if joined := joinedOf(d.Number); joined != "" {
			b.post(joined, i, inWords)
		}
		if key := numberKey(d.Number); key != "" {
			b.post(numberMark+key, i, inWords)
		}
	}
	for _, w := range d.Words {
		b.text(i, w, inWords)
	}
	b.text(i, d.Text, inText)
}

func (b *builder) text(doc int, text string, place uint32) {
	s := scanner{text: text}
	b.recent = b.recent[:0]
	before := ""
	for s.next() {
		t := b.token(s.word)
		if t.word == "" {
			before = ""
			continue
		}
		word := t.word
		b.postAt(t.post, doc, place)
		if s.hyphen && !isDigit(rune(word[0])) && before != "" && !isDigit(rune(before[0])) {
			b.post(singular(before+word), doc, place) // heat-shrink is heatshrink too
		}
		before = word
		b.phrase(t, doc, place)
	}
}

// phrase files the phrases of the glossary that end with this word.
func (b *builder) phrase(t token, doc int, place uint32) {
	if len(b.phrases) == 0 {
		return
	}
	if len(b.recent) == maxPhrase {
		b.recent = slices.Delete(b.recent, 0, 1)
	}
	b.recent = append(b.recent, t.word)
	if !t.ends {
		return
	}
	for from := 0; from < len(b.recent)-1; from++ {
		if p := strings.Join(b.recent[from:], " "); b.phrases[p] {
			b.post(p, doc, place)
		}
	}
}

func (b *builder) post(word string, doc int, place uint32) { b.postAt(b.place(word), doc, place) }

// place gives a word's place in posts.
func (b *builder) place(word string) int {
	at, known := b.words[word]
	if !known {
		at = len(b.posts)
		b.words[word] = at
		b.posts = append(b.posts, nil)
	}
	return at
}

func (b *builder) postAt(at, doc int, place uint32) {
	list := b.posts[at]
	if n := len(list); n > 0 && list[n-1]>>placeBits == uint32(doc) {
		list[n-1] |= place
		return
	}
	b.posts[at] = append(list, uint32(doc)<<placeBits|place)
}

// name is a phrase of the glossary, folded, and the groups that it stands in.
type name struct {
	phrase string
	groups []int
}

// readSynonyms folds the glossary's groups. Names are sorted, groups of fewer
// than two names and phrases of too many words are left out.
func readSynonyms(synonyms [][]string) []name {
	groups := map[string][]int{}
	next := 0
	for _, list := range synonyms {
		var folded []string
		for _, s := range list {
			p := phraseOf(s)
			if p != "" && strings.Count(p, " ") < maxPhrase && !slices.Contains(folded, p) {
				folded = append(folded, p)
			}
		}
		if len(folded) < 2 {
			continue
		}
		for _, p := range folded {
			groups[p] = append(groups[p], next)
		}
		next++
	}
	var names []name
	for p, g := range groups {
		names = append(names, name{p, g})
	}
	slices.SortFunc(names, func(a, b name) int { return strings.Compare(a.phrase, b.phrase) })
	return names
}

// shorten gives the beginning of a text as one line, cut between words.
func shorten(text string) string {
	text = strings.Join(strings.Fields(strings.ToValidUTF8(text, "")), " ")
	if len(text) <= keptText {
		return text
	}
	cut := strings.LastIndexByte(text[:keptText], ' ')
	if cut < keptText/2 {
		cut = keptText // one endless word
		for cut > 0 && text[cut]&0xC0 == 0x80 {
			cut--
		}
	}
	return strings.TrimRight(text[:cut], " ,;:.") + "…"
}
