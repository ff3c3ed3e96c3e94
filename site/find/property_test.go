package find

import (
	"slices"
	"strings"
	"testing"
)

// TestEveryWordFindsItsDocument types each word of each document as it stands,
// half, and with a slip; its page is among the answers.
func TestEveryWordFindsItsDocument(t *testing.T) {
	docs := testDocs()
	x := Build(docs, testSynonyms)
	finds := func(query string, doc int) bool {
		return slices.ContainsFunc(x.Find(query, len(docs)), func(h Hit) bool {
			return h.Doc == doc || docs[doc].Sheet >= 0 && docs[h.Doc].Sheet == docs[doc].Sheet
		})
	}
	for i, d := range docs {
		for _, w := range split(d.Text) {
			if isStop(w) {
				continue
			}
			if !finds(w, i) || !finds(w+" ", i) {
				t.Errorf("%q does not find %q", w, d.Text)
			}
			if len(w) < 5 {
				continue
			}
			if !finds(w[:len(w)-1], i) {
				t.Errorf("%q does not find %q", w[:len(w)-1], d.Text)
			}
			// q stands in no English word in these places, so the slip is no word.
			for _, slip := range []string{w[:2] + "q" + w[3:], w[:2] + "q" + w[2:]} {
				if !finds(slip+" ", i) && !isPlural(w) {
					t.Errorf("%q does not find %q", slip, d.Text)
				}
			}
		}
	}
}

// isPlural reports whether a word is filed under another form, from which a
// slip may be two errors away.
func isPlural(w string) bool { return singular(w) != w }

// TestAllWordsMustMatch checks answers against the plain meaning: unless they are
// partial, each word of the query stands on the document's page.
func TestAllWordsMustMatch(t *testing.T) {
	docs := testDocs()
	x := Build(docs, nil)
	text := func(i int) string {
		d := docs[i]
		s := d.Title + " " + d.Number + " " + strings.Join(d.Words, " ") + " " + d.Text
		for _, o := range docs {
			if o.Sheet == d.Sheet && d.Sheet >= 0 {
				s += " " + o.Title + " " + strings.Join(o.Words, " ") + " " + o.Text
			}
		}
		return " " + phraseOf(s) + " "
	}
	answers := 0
	for i, d := range docs {
		words := split(d.Text)
		for k := 0; k+3 < len(words); k += 2 {
			query := words[k] + " " + words[k+3] + " "
			for _, h := range x.Find(query, 20) {
				answers++
				for _, tm := range parse(query) {
					near := append(forms(tm.raw), tm.word)
					if !h.Partial && !slices.ContainsFunc(near, func(w string) bool { return strings.Contains(text(h.Doc), " "+w+" ") }) {
						t.Errorf("%q (of document %d) finds %q, which lacks %s", query, i, h.Address, tm.raw)
					}
				}
			}
		}
	}
	if answers < 200 {
		t.Errorf("only %d answers were checked", answers)
	}
}

// TestTitleBeatsText puts each title word in a step of an earlier sheet: the
// sheet that has it in its title still comes first.
func TestTitleBeatsText(t *testing.T) {
	for _, s := range testSheets {
		for _, w := range split(s.title) {
			if isStop(w) {
				continue
			}
			x := Build([]Doc{
				{Sheet: 0, Kind: Sheet, Title: "Nothing of the kind", Address: "a.html", Text: w},
				{Sheet: 0, Kind: Step, Title: "Nothing of the kind", Address: "a.html#step-1", Text: w + " " + w},
				{Sheet: 1, Kind: Sheet, Title: s.title, Address: "b.html"},
			}, nil)
			if hits := x.Find(w, 3); len(hits) != 2 || hits[0].Address != "b.html" {
				t.Errorf("%q: %v", w, hits)
			}
		}
	}
}

// TestOrderOfWordsDoesNotMatter: the same words in any order find the same
// documents, where no phrase or number is among them.
func TestOrderOfWordsDoesNotMatter(t *testing.T) {
	x := Build(testDocs(), nil)
	for _, d := range testDocs() {
		words := split(d.Text)
		if len(words) < 4 {
			continue
		}
		if _, joined := x.lookup(words[3] + words[0]); joined {
			continue // "in put" finds input too
		}
		a, b := words[0]+" "+words[3]+" ", words[3]+" "+words[0]+" "
		if got, want := addresses(x, b), addresses(x, a); !slices.Equal(got, want) {
			t.Errorf("%q finds %q, %q finds %q", a, want, b, got)
		}
	}
}
