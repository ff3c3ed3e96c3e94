package find

import (
	"math/rand"
	"strconv"
	"strings"
	"testing"
)

// bigBook makes a book of sheets with ten steps each. Words are drawn so that a
// few are in every second document and most in a handful, as in a real book.
func bigBook(sheets int) []Doc {
	rnd := rand.New(rand.NewSource(7))
	zipf := rand.NewZipf(rnd, 1.1, 8, 20000)
	var known []string
	for _, d := range testDocs() {
		known = append(known, split(d.Text)...)
	}
	syllables := []string{"gro", "met", "fu", "se", "ca", "ble", "ter", "min", "al", "spli", "re", "lay", "vol", "tage", "pan", "el"}
	vocabulary := make([]string, 20001)
	for i := range vocabulary {
		if i < len(known) {
			vocabulary[i] = known[i]
			continue
		}
		for range 2 + rnd.Intn(3) {
			vocabulary[i] += syllables[rnd.Intn(len(syllables))]
		}
	}
	sentence := func(words int) string {
		var b strings.Builder
		for range words {
			b.WriteString(vocabulary[zipf.Uint64()] + " ")
		}
		return strings.TrimSpace(b.String())
	}
	var docs []Doc
	for s := range int32(sheets) {
		d := Doc{Sheet: s, Kind: Sheet, Title: sentence(4), Number: "BK-" + strconv.Itoa(int(s)), Address: "area/sheet-" + strconv.Itoa(int(s)) + ".html", Area: "area", Text: sentence(25)}
		docs = append(docs, d)
		for n := range 10 {
			docs = append(docs, Doc{Sheet: s, Kind: Step, Title: d.Title, Number: d.Number, Address: d.Address + "#step-" + strconv.Itoa(n+1), Area: "area", Text: sentence(12 + rnd.Intn(18))})
		}
	}
	return docs
}

const benchSheets = 5000

func BenchmarkFind(b *testing.B) {
	x := Build(bigBook(benchSheets), testSynonyms)
	b.Logf("%d documents, %d words", x.Len(), len(x.words))
	for _, q := range []string{"g", "the", "gromm", "earth point", "pilot hole depth stop", "camrea miror", "BK-4711 step 4", "cable terminal fuse drill meter ring"} {
		b.Run(strings.ReplaceAll(q, " ", "_"), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				x.Find(q, 20)
			}
		})
	}
}

func BenchmarkDecode(b *testing.B) {
	data := Build(bigBook(benchSheets), testSynonyms).Encode()
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		if _, err := Decode(data); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(data))/benchSheets, "bytes/sheet")
}

func BenchmarkBuild(b *testing.B) {
	docs := bigBook(benchSheets)
	b.ReportAllocs()
	for b.Loop() {
		Build(docs, testSynonyms)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N)/benchSheets, "µs/sheet")
}

func BenchmarkMarkup(b *testing.B) {
	x := Build(testDocs(), testSynonyms)
	hits := x.Find("ground", 20)
	var out []byte
	for b.Loop() {
		out = AppendMarkup(out[:0], hits, "../")
	}
}
