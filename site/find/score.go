package find

// placePoints are the points for a word by the places where it stands: title
// 100, further words 60, text 30, and a little for each further place.
var placePoints = [1 << placeBits]int32{
	inTitle: 100, inWords: 60, inText: 30,
	inTitle | inWords: 105, inTitle | inText: 110, inWords | inText: 65,
	inTitle | inWords | inText: 115,
}

const (
	titleCovered = 400 // for a title that is the query's words and no others
	partShare    = 6   // a sheet gets this fraction for a word in one of its parts
	gathered     = 3   // a sheet that needs its parts' words gets this fraction in all
	titleShare   = 3   // a part gets this fraction for a word in its sheet's title
)

// tally is what a query found so far, each list by document.
type tally struct {
	x       *Index
	score   []int32
	found   []uint16 // the terms that the document or, for a sheet, one of its parts has; a bit for each
	own     []uint16 // the terms that the document itself has
	titled  []uint16 // the terms in its title
	lent    []uint16 // the terms that a sheet's title and further words lend to its parts
	best    []int32  // of the term being counted
	part    []int32  // the same, from the parts of a sheet
	touched []int32  // documents that the term being counted is in
	share   []int32  // what a sheet's title gives to its parts
	only    int32    // the sheet that is searched; negative for all
	numbers uint16   // the terms that are mere numbers
}

func newTally(x *Index, only int32) *tally {
	n := x.Len()
	return &tally{
		x: x, only: only, score: make([]int32, n),
		found: make([]uint16, n), own: make([]uint16, n), titled: make([]uint16, n), lent: make([]uint16, n),
		best: make([]int32, n), part: make([]int32, n), share: make([]int32, n),
	}
}

// count adds the points of one term, which has the given bit.
func (t *tally) count(tm *term, bit uint16) {
	t.touched = t.touched[:0]
	if isDigit(rune(tm.raw[0])) {
		t.numbers |= bit
	}
	docs := 0
	for _, a := range tm.alts {
		docs += t.x.words[a.entry].docs
		t.gather(a, bit)
	}
	rare := rarity(docs, t.x.Len())
	for _, d := range t.touched {
		points := t.best[d]
		if points > 0 {
			t.found[d] |= bit
			t.own[d] |= bit
			if t.lent[d]&bit != 0 {
				t.share[d] += points * rare / (100 * titleShare)
			}
		}
		if from := t.part[d] / partShare; from > points {
			points = from
			t.found[d] |= bit
		}
		t.score[d] += points * rare / 100
		t.best[d], t.part[d] = 0, 0
	}
}

// gather keeps the best points of an entry for each document that has it, and
// for the sheets whose parts have it. Points are hundredfold.
func (t *tally) gather(a alt, bit uint16) {
	for p := t.x.postings(a.entry); p.next(); {
		doc := p.doc
		points := placePoints[p.places] * a.fit
		t.touch(doc)
		t.best[doc] = max(t.best[doc], points)
		if p.places&inTitle != 0 {
			t.titled[doc] |= bit
		}
		if p.places&(inTitle|inWords) != 0 {
			t.lent[doc] |= bit
		}
		if sheet := t.x.parent[doc]; sheet != doc {
			t.touch(sheet)
			t.part[sheet] = max(t.part[sheet], points)
		}
	}
}

func (t *tally) touch(doc int32) {
	if t.best[doc]|t.part[doc] == 0 {
		t.touched = append(t.touched, doc)
	}
}

// rarity is 4 for a word that every document has, and 2 more for each halving of
// their number, up to 20.
func rarity(docs, all int) int32 {
	r := int32(4)
	for docs = max(docs, 1); docs < all && r < 20; docs *= 2 {
		r += 2
	}
	return r
}

// ranked is a document with its score.
type ranked struct {
	doc   int32
	score int32
}

// top gives the n best documents of those with the most terms, and how many
// terms that is. Numbers count as terms only beside a word, or when all terms are
// found: 12 alone is no answer to ZZ-12.
func (t *tally) top(n, all int) (best []ranked, terms int) {
	for i := range t.found {
		sheet := t.x.parent[i]
		if t.found[i] == 0 || t.only >= 0 && sheet != t.only {
			continue
		}
		found, score := t.judge(int32(i), sheet)
		have := bits(found)
		if have < all && found&^t.numbers == 0 || have < terms {
			continue
		}
		if have > terms {
			terms = have
			best = best[:0]
		}
		best = insert(best, ranked{int32(i), score}, n)
	}
	return best, terms
}

// judge gives a document's terms and score, with what its sheet lends it.
func (t *tally) judge(doc, sheet int32) (found uint16, score int32) {
	found, score = t.found[doc], t.score[doc]
	if lent := t.lent[sheet] &^ found; lent != 0 && sheet != doc {
		found |= lent
		score += t.share[sheet] * int32(bits(lent)) / int32(bits(t.lent[sheet]))
	}
	if in := bits(t.titled[doc]); in > 0 {
		score += titleCovered * int32(in) / int32(max(in, t.x.titleWords(int(doc))))
	}
	if sheet == doc && t.own[doc] != found {
		score /= gathered
	}
	return found, score
}

// insert puts a document in its place among the n best. Of equal scores the one
// that came first stays before the other.
func insert(best []ranked, r ranked, n int) []ranked {
	if len(best) < n {
		best = append(best, r)
	} else if best[n-1].score >= r.score {
		return best
	}
	at := len(best) - 1
	for ; at > 0 && best[at-1].score < r.score; at-- {
		best[at] = best[at-1]
	}
	best[at] = r
	return best
}

// titleWords counts the words of a title, roughly: it is for weighing only.
func (x *Index) titleWords(doc int) int {
	title := x.record(doc).title
	n := 1
	for i := range len(title) {
		if title[i] == ' ' {
			n++
		}
	}
	return n
}

func bits(m uint16) int {
	n := 0
	for ; m != 0; m &= m - 1 {
		n++
	}
	return n
}
