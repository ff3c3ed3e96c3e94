package find

import "strings"

// perSheet is how many answers of one sheet stand before those of others.
const perSheet = 3

// Find answers a query with at most limit documents, the best first; none for an
// empty query or when nothing fits.
func (x *Index) Find(query string, limit int) []Hit {
	terms := parse(query)
	if len(terms) == 0 || limit <= 0 {
		return nil
	}
	first, rest := x.jump(terms)
	if len(first) == 0 {
		found, partial := x.search(terms, -1, limit)
		return x.hits(x.spread(found, limit), terms, partial)
	}
	if len(rest) == 0 {
		found, partial := x.search(terms, -1, limit) // who else names that number
		list := ranks(first)
		if !partial {
			list = append(list, found...)
		}
		return x.hits(unique(list, limit), terms, false)
	}
	var list []ranked
	for _, sheet := range first {
		found, partial := x.search(rest, sheet, limit)
		if !partial {
			list = append(list, found...)
		}
	}
	return x.hits(unique(append(list, ranks(first)...), limit), rest, false)
}

// search finds the best documents for the terms, in one sheet or, with only
// negative, in all. Partial tells that no document has every term. It gives more
// than limit, so that some can be passed over.
func (x *Index) search(terms []term, only int32, limit int) (best []ranked, partial bool) {
	have := 0
	for _, typos := range [...]bool{false, true} {
		x.expand(terms, typos)
		t := newTally(x, only)
		for i := range terms {
			t.count(&terms[i], 1<<i)
		}
		found, n := t.top(4*limit, len(terms))
		if n > have {
			best, have = found, n
		}
		if have == len(terms) {
			return best, false
		}
	}
	if 2*have < len(terms) {
		return nil, true
	}
	return best, true
}

// ranks makes answers of documents that need no score.
func ranks(docs []int32) []ranked {
	list := make([]ranked, len(docs))
	for i, d := range docs {
		list[i].doc = d
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

// spread gives the first n documents, at most perSheet of each sheet before the
// rest of them.
func (x *Index) spread(list []ranked, n int) []ranked {
	var out, later []ranked
	for _, r := range list {
		same := 0
		for _, o := range out {
			if x.parent[o.doc] == x.parent[r.doc] {
				same++
			}
		}
		if same < perSheet {
			out = append(out, r)
		} else {
			later = append(later, r)
		}
		if len(out) == n {
			return out
		}
	}
	return append(out, later[:min(len(later), n-len(out))]...)
}

// hits reads the documents and marks the words that were found.
func (x *Index) hits(list []ranked, terms []term, partial bool) []Hit {
	if len(list) == 0 {
		return nil
	}
	marked := x.entries(terms)
	hits := make([]Hit, len(list))
	for i, r := range list {
		d := x.record(int(r.doc))
		hits[i] = Hit{
			Doc: int(r.doc), Kind: x.kind[r.doc], Score: int(r.score), Partial: partial,
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
