package find

import "strings"

// Find answers a query with at most limit pages, the best first, each by the
// step or section that answers best; none for an empty query or when nothing
// fits. A calculator that the query's values fill in stands before all.
func (x *Index) Find(query string, limit int) []Hit {
	hits := x.find(query, limit)
	address, doc := x.filled(query)
	if doc < 0 || limit <= 0 {
		return hits
	}
	first := x.hits([]ranked{{doc: doc, whole: true}}, nil)
	first[0].Address = address
	for _, h := range hits {
		if h.Doc != int(doc) && len(first) < limit {
			first = append(first, h)
		}
	}
	return first
}

func (x *Index) find(query string, limit int) []Hit {
	terms := parse(query)
	if len(terms) == 0 || limit <= 0 {
		return nil
	}
	first, rest := x.jump(terms)
	if len(first) == 0 {
		return x.hits(x.search(terms, -1, limit), terms)
	}
	if len(rest) == 0 {
		// Who else names that number stands behind it.
		return x.hits(unique(append(ranks(first), wholeOnes(x.search(terms, -1, limit))...), limit), terms)
	}
	var list []ranked
	for _, sheet := range first {
		list = append(list, wholeOnes(x.search(rest, sheet, limit))...)
	}
	return x.hits(unique(append(list, ranks(first)...), limit), rest)
}

// search finds the best pages for the terms, in one sheet or, with only
// negative, in all. Typing errors are looked for in words that the book does not
// know, and in all when nothing else is found.
func (x *Index) search(terms []term, only int32, limit int) (best []ranked) {
	for _, typos := range [...]bool{false, true} {
		x.expand(terms, typos)
		t := newTally(x, only)
		for i := range terms {
			t.count(&terms[i], 1<<i)
		}
		if best = t.top(limit, len(terms)); len(best) > 0 {
			break
		}
	}
	return best
}

// wholeOnes are those that have every term.
func wholeOnes(list []ranked) (whole []ranked) {
	for _, r := range list {
		if r.whole {
			whole = append(whole, r)
		}
	}
	return whole
}

// ranks makes answers of documents that need no score.
func ranks(docs []int32) []ranked {
	list := make([]ranked, len(docs))
	for i, d := range docs {
		list[i] = ranked{doc: d, whole: true}
	}
	return list
}

// unique gives the first n different documents.
func unique(list []ranked, n int) []ranked {
	var out []ranked
	for _, r := range list {
		if len(out) < n && !holds(out, r.doc) {
			out = append(out, r)
		}
	}
	return out
}

func holds(list []ranked, doc int32) bool {
	for _, r := range list {
		if r.doc == doc {
			return true
		}
	}
	return false
}

// hits reads the documents and marks the words that were found.
func (x *Index) hits(list []ranked, terms []term) []Hit {
	if len(list) == 0 {
		return nil
	}
	marked := x.entries(terms)
	hits := make([]Hit, len(list))
	for i, r := range list {
		d := x.record(int(r.doc))
		hits[i] = Hit{
			Doc: int(r.doc), Kind: x.kind[r.doc], Score: int(r.score), Partial: !r.whole,
			Title: d.title, Number: d.number, Address: d.address, Area: d.area, Excerpt: d.text,
			TitleMarks: x.marks(d.title, marked), ExcerptMarks: x.marks(d.text, marked),
		}
		if hits[i].Kind == Step {
			hits[i].Step = stepNumber(d.address)
		}
	}
	return hits
}

// marks finds the words of a text that are marked in the vocabulary, alone or as
// part of a phrase or of a word with a hyphen.
func (x *Index) marks(text string, marked []bool) []Span {
	var spans []Span
	var recent []string
	var starts []int
	is := func(s string) bool {
		e, ok := x.lookup(s)
		return ok && marked[e]
	}
	s := scanner{text: text}
	for s.next() {
		if isStop(string(s.word)) {
			continue
		}
		w := singular(string(s.word))
		if len(recent) == maxPhrase {
			recent, starts = recent[1:], starts[1:]
		}
		recent, starts = append(recent, w), append(starts, s.start)
		for from := range recent {
			last := len(recent) - 1
			if is(strings.Join(recent[from:], " ")) || s.hyphen && from == last-1 && is(singular(recent[from]+w)) {
				spans = appendSpan(spans, Span{starts[from], s.end})
				break
			}
		}
	}
	return spans
}

// appendSpan adds a span that ends after all others, and swallows those that it
// covers.
func appendSpan(spans []Span, s Span) []Span {
	for len(spans) > 0 && spans[len(spans)-1].End > s.Start {
		s.Start = min(s.Start, spans[len(spans)-1].Start)
		spans = spans[:len(spans)-1]
	}
	return append(spans, s)
}
