package find

import (
	"bytes"
	"errors"
	"math/rand"
	"reflect"
	"strings"
	"sync"
	"testing"
	"unicode/utf8"
)

func TestRoundTrip(t *testing.T) {
	built := Build(testDocs(), testSynonyms)
	data := built.Encode()
	read, err := Decode(data)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(read.Encode(), data) || read.Len() != len(testDocs()) {
		t.Errorf("the index read back is not the same")
	}
	for _, tt := range findTests {
		if a, b := built.Find(tt.query, 10), read.Find(tt.query, 10); !reflect.DeepEqual(a, b) {
			t.Errorf("%q finds %v, after reading back %v", tt.query, a, b)
		}
	}
}

func TestEveryDocumentIsKept(t *testing.T) {
	docs := testDocs()
	docs[3].Area, docs[9].Area = "ground", "other"
	docs = append(docs, Doc{Sheet: 77, Kind: Step, Title: "Of no sheet", Address: "x.html#step-1"})
	x := Build(docs, nil)
	for i, d := range docs {
		r := x.record(i)
		if r.title != d.Title || r.number != d.Number || r.address != d.Address || r.area != d.Area || r.text != shorten(d.Text) || x.kind[i] != d.Kind {
			t.Errorf("document %d is %+v, was %+v", i, r, d)
		}
	}
}

func TestSameBookSameBytes(t *testing.T) {
	want := Build(testDocs(), testSynonyms).Encode()
	for range 20 {
		if !bytes.Equal(Build(testDocs(), testSynonyms).Encode(), want) {
			t.Fatal("two builds of one book differ")
		}
	}
}

func TestEmptyBook(t *testing.T) {
	for _, x := range []*Index{Build(nil, nil), Build(nil, testSynonyms), Build([]Doc{{}}, nil)} {
		if hits := x.Find("ground", 5); hits != nil {
			t.Errorf("an empty book answers %v", hits)
		}
	}
}

func TestWordsInSeveralGroups(t *testing.T) {
	docs := []Doc{{Kind: Sheet, Sheet: 0, Title: "Alpha", Address: "a"}, {Kind: Sheet, Sheet: 1, Title: "Delta", Address: "d"}}
	var groups [][]string // more groups than words: every pair of five words
	words := []string{"alpha", "bravo", "charlie", "delta", "echo"}
	for i := range words {
		for j := range i {
			groups = append(groups, []string{words[j], words[i]})
		}
	}
	groups = append(groups, nil, []string{"alone"}, []string{"one", "One "}, []string{"five words are too many", "foxtrot"})
	x := Build(docs, groups)
	for _, w := range words {
		if n := len(x.Find(w, 5)); n != 2 {
			t.Errorf("%s finds %d documents, want both", w, n)
		}
	}
	if hits := x.Find("foxtrot", 5); hits != nil {
		t.Errorf("foxtrot finds %v", hits)
	}
}

func TestShorten(t *testing.T) {
	long := strings.Repeat("word ", 100)
	for _, tt := range []struct{ text, want string }{
		{"  one\n\ttwo ", "one two"},
		{long, strings.TrimRight(long[:keptText-1], " ") + "…"},
		{strings.Repeat("é", 100), strings.Repeat("é", keptText/2) + "…"},
		{strings.Repeat("x", 60) + ", " + strings.Repeat("y", 99), strings.Repeat("x", 60) + "…"},
	} {
		got := shorten(tt.text)
		if !utf8.ValidString(got) || len(got) > keptText+len("…") {
			t.Errorf("shorten(%q) = %q of %d bytes", tt.text, got, len(got))
		}
		if tt.text != long && got != tt.want {
			t.Errorf("shorten(%q) = %q, want %q", tt.text, got, tt.want)
		}
	}
	if got := shorten(long); !strings.HasSuffix(got, "word…") {
		t.Errorf("cut inside a word: %q", got)
	}
}

// resum gives data a checksum that fits, so that damage gets past it.
func resum(data []byte) []byte {
	if len(data) < 4 {
		return data
	}
	body := data[:len(data)-4]
	s := sum(string(body))
	return append(bytes.Clone(body), byte(s), byte(s>>8), byte(s>>16), byte(s>>24))
}

func TestDecodeRefusesDamage(t *testing.T) {
	data := Build(testDocs(), testSynonyms).Encode()
	for i := range data {
		hurt := bytes.Clone(data)
		hurt[i] ^= 0x10
		if _, err := Decode(hurt); err == nil {
			t.Fatalf("a wrong bit in byte %d goes unseen", i)
		}
	}
	for n := range data {
		_, err := Decode(data[:n])
		var e *Error
		if !errors.As(err, &e) || !strings.Contains(e.Error(), "build the book again") {
			t.Fatalf("cut to %d bytes: %v", n, err)
		}
		if n > 8 {
			if _, err := Decode(resum(data[:n])); err == nil {
				t.Fatalf("cut to %d bytes with a checksum that fits goes unseen", n)
			}
		}
	}
	if _, err := Decode(resum(append(bytes.Clone(data), 0))); err == nil {
		t.Error("a byte too many goes unseen")
	}
}

// TestDecodedIndexAnswers damages an index in ways that the checksum does not
// show: it is refused, or it answers without panic.
func TestDecodedIndexAnswers(t *testing.T) {
	data := Build(testDocs(), testSynonyms).Encode()
	rnd := rand.New(rand.NewSource(1))
	read := 0
	for range 20000 {
		hurt := bytes.Clone(data)
		for range 1 + rnd.Intn(3) {
			hurt[rnd.Intn(len(hurt))] = byte(rnd.Intn(256))
		}
		x, err := Decode(resum(hurt))
		if err != nil {
			continue
		}
		read++
		tt := findTests[rnd.Intn(len(findTests))]
		AppendMarkup(nil, x.Find(tt.query, 10), "../")
	}
	if read == 0 {
		t.Error("every damaged index was refused: nothing was tested")
	}
}

func TestFindConcurrently(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	want := x.Find("ground drill", 10)
	var wg sync.WaitGroup
	for range 8 {
		wg.Go(func() {
			if got := x.Find("ground drill", 10); !reflect.DeepEqual(got, want) {
				t.Errorf("another answer: %v", got)
			}
		})
	}
	wg.Wait()
}

func FuzzDecode(f *testing.F) {
	f.Add(Build(testDocs()[:8], testSynonyms[:2]).Encode(), "ground step 2")
	f.Add(Build(nil, nil).Encode(), "")
	f.Add([]byte(magic+"\x00\x00\x00\x00\x00\x00\x00\x00"), "x")
	f.Fuzz(func(t *testing.T, data []byte, query string) {
		if x, err := Decode(resum(data)); err == nil {
			AppendMarkup(nil, x.Find(query, 5), "")
			x.Find(query+" ", 5)
		}
	})
}

func FuzzFind(f *testing.F) {
	for _, tt := range findTests {
		f.Add(tt.query)
	}
	x := Build(testDocs(), testSynonyms)
	f.Fuzz(func(t *testing.T, query string) {
		hits := x.Find(query, 10)
		if len(hits) > 10 {
			t.Fatalf("%d answers", len(hits))
		}
		seen := map[int]bool{}
		for _, h := range hits {
			if seen[h.Doc] {
				t.Fatalf("document %d twice", h.Doc)
			}
			seen[h.Doc] = true
			checkSpans(t, h.Title, h.TitleMarks)
			checkSpans(t, h.Excerpt, h.ExcerptMarks)
		}
	})
}

func checkSpans(t *testing.T, text string, spans []Span) {
	t.Helper()
	at := 0
	for _, s := range spans {
		if s.Start < at || s.End <= s.Start || s.End > len(text) || !utf8.ValidString(text[s.Start:s.End]) {
			t.Fatalf("span %v in %q after %d", s, text, at)
		}
		at = s.End
	}
}
