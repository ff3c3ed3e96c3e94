package find

// placePoints are the points for a word by the places where it stands: title
// 100, further words 70, text 30, and a little for each further place.
var placePoints = [1 << placeBits]int32{
	inTitle: 100, inWords: 70, inText: 30,
	inTitle | inWords: 110, inTitle | inText: 110, inWords | inText: 80,
	inTitle | inWords | inText: 120,
}

// How a page's score is put together, in percent.
const (
	partShare  = 70  // of a word's points in a step or section, for the page
	bestShare  = 100 // of the score of the page's best step, section or opening
	titleShare = 45  // of the points in a title, by how much of it the query covers
	ownShare   = 30  // what stays of a page on the book itself: it speaks of everything
	ownArea    = "book"
)

// tally is what a query found so far. Lists go by document; those of pages by
// the document that stands for the page: a sheet, or a calculator.
type tally struct {
	x       *Index
	score   []int32  // of a document by itself
	best    []int32  // of the term being counted
	touched []int32  // documents that the term being counted is in
	page    []int32  // of a page: each term once, where it counts most
	most    []int32  // of the term being counted
	pages   []int32  // pages that the term being counted is in
	title   []int32  // points in the title
	titled  []uint16 // the terms in the title; a bit for each
	own     []uint16 // the terms in the document
	found   []uint16 // the terms on the page
	only    int32    // the page that is searched; negative for all
	all     int      // how many pages there are
	numbers uint16   // the terms that are mere numbers
}

func newTally(x *Index, only int32) *tally {
	n := x.Len()
	t := &tally{
		x: x, only: only, score: make([]int32, n), best: make([]int32, n),
		page: make([]int32, n), most: make([]int32, n), title: make([]int32, n),
		titled: make([]uint16, n), own: make([]uint16, n), found: make([]uint16, n),
	}
	for i, p := range x.parent {
		if int(p) == i {
			t.all++
		}
	}
	return t
}

// count adds the points of one term, which has the given bit.
func (t *tally) count(tm *term, bit uint16) {
	t.touched, t.pages = t.touched[:0], t.pages[:0]
	if isDigit(rune(tm.raw[0])) {
		t.numbers |= bit
	}
	for _, a := range tm.alts {
		t.gather(a, bit)
	}
	rare := rarity(len(t.pages), t.all)
	for _, d := range t.touched {
		t.score[d] += t.best[d] * rare / 100
		t.own[d] |= bit
		t.best[d] = 0
	}
	for _, p := range t.pages {
		t.page[p] += t.most[p] * rare / 100
		if t.titled[p]&bit != 0 {
			t.title[p] += 100 * rare
		}
		t.found[p] |= bit
		t.most[p] = 0
	}
}

// gather keeps the best points of an entry for each document that has it, and
// for its page. Points are hundredfold.
func (t *tally) gather(a alt, bit uint16) {
	for p := t.x.postings(a.entry); p.next(); {
		doc, page := p.doc, t.x.parent[p.doc]
		points := placePoints[p.places] * a.fit
		if t.best[doc] == 0 {
			t.touched = append(t.touched, doc)
		}
		t.best[doc] = max(t.best[doc], points)
		if doc != page {
			points = points / 100 * partShare
		} else if p.places&inTitle != 0 && a.fit > fitStart {
			t.titled[page] |= bit
		}
		if t.most[page] == 0 {
			t.pages = append(t.pages, page)
		}
		t.most[page] = max(t.most[page], points)
	}
}

// rarity is 4 for a word that every page has, and 2 more for each halving of
// their number, up to 20.
func rarity(pages, all int) int32 {
	r := int32(4)
	for pages = max(pages, 1); pages < all && r < 20; pages *= 2 {
		r += 2
	}
	return r
}

// ranked is a document with its score.
type ranked struct {
	doc   int32
	score int32
	whole bool // it has every term
}

// top gives the n best pages, each by the document on it that answers best. A
// number alone is no answer to a query of more: 12 is none to ZZ-12.
func (t *tally) top(n, all int) (best []ranked) {
	answer := t.best // of each page; zeros after the last term
	for i, page := range t.x.parent {
		if t.x.parent[answer[page]] != page || t.answers(int32(i), page, answer[page]) {
			answer[page] = int32(i)
		}
	}
	for i, parent := range t.x.parent {
		page := int32(i)
		found := t.found[page]
		have := bits(found)
		if parent != page || have == 0 || t.only >= 0 && page != t.only || have < all && found&^t.numbers == 0 {
			continue
		}
		score := t.judge(page, answer[page]) * int32(all+have) / int32(2*all)
		best = insert(best, ranked{answer[page], score, have == all}, n)
	}
	return best
}

// answers reports whether a document of a page answers better than another one:
// with more terms, counting those of the page's title, or else with more points.
func (t *tally) answers(doc, page, other int32) bool {
	a, b := bits(t.own[doc]|t.titled[page]), bits(t.own[other]|t.titled[page])
	return a > b || a == b && t.score[doc] > t.score[other]
}

// judge gives a page's score.
func (t *tally) judge(page, answer int32) int32 {
	score := t.page[page] + t.score[answer]*bestShare/100
	if in := bits(t.titled[page]); in > 0 {
		score += t.title[page] * titleShare / 100 * int32(in) / int32(max(in, t.x.titleWords(int(page))))
	}
	if t.x.record(int(page)).area == ownArea {
		score = score * ownShare / 100
	}
	return score
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

// titleWords counts the words of a title that tell something, roughly: it is for
// weighing only.
func (x *Index) titleWords(doc int) int {
	s := scanner{text: x.record(doc).title}
	n := 0
	for s.next() {
		if !isStop(string(s.word)) {
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
