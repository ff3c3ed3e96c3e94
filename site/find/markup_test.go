package find

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"
)

func TestAppendMarkup(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	got := string(AppendMarkup([]byte("before "), x.Find("drip loop", 1), "../"))
	const want = `before <ol class="found"><li class="found-step"><a href="../passage/bulkhead-grommet.html#step-2">` +
		`<span class="found-number">PA-04 step 2</span> <span class="found-title">Bulkhead grommet</span> ` +
		`<span class="found-text">Form a <mark>drip</mark> <mark>loop</mark> on the engine side.</span></a></li></ol>`
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

func TestMarkupOfEachKind(t *testing.T) {
	x := Build(testDocs(), testSynonyms)
	for _, tt := range []struct{ query, want string }{
		{"fuse size", `<li class="found-calculator"><a href="calculators/fuse-size.html"><span class="found-number">calculator</span> <span class="found-title"><mark>Fuse</mark> <mark>size</mark>`},
		{"bulkhead grommet", `<li class="found-sheet"><a href="passage/bulkhead-grommet.html"><span class="found-number">PA-04</span>`},
		{"prove ring", `<li class="found-section"><a href="ground/ground-point.html#prove-it"><span class="found-number">GR-02</span> <span class="found-title"><mark>Prove</mark> it`},
		{"earth point steel", `<span class="found-title"><mark>Ground</mark> <mark>point</mark> on painted <mark>steel</mark>`},
		{"heatshrink", `<mark>Heat-shrink</mark> and seal`},
		{"grommet banana", `<p class="found-note">No page has all of these words`},
		{"banana", `<p class="found-note">Nothing found.`},
	} {
		got := string(AppendMarkup(nil, x.Find(tt.query, 1), ""))
		if !strings.Contains(got, tt.want) {
			t.Errorf("%q: %s\nlacks %s", tt.query, got, tt.want)
		}
	}
}

// wellFormed reads a fragment with the XML decoder, which refuses anything that
// was not escaped, and gives its text and links.
func wellFormed(t *testing.T, fragment []byte) (text string, links []string) {
	t.Helper()
	d := xml.NewDecoder(strings.NewReader("<x>" + string(fragment) + "</x>"))
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return text, links
		}
		if err != nil {
			t.Fatalf("%v in %s", err, fragment)
		}
		switch tok := tok.(type) {
		case xml.CharData:
			text += string(tok)
		case xml.StartElement:
			for _, a := range tok.Attr {
				if a.Name.Local == "href" {
					links = append(links, a.Value)
				}
			}
		}
	}
}

func TestMarkupIsEscaped(t *testing.T) {
	const nasty = `<script>alert("1")</script> & 'x' ground`
	x := Build([]Doc{{Kind: Sheet, Title: nasty, Number: `<b>"`, Address: `a"><i>.html`, Text: nasty}}, nil)
	text, links := wellFormed(t, AppendMarkup(nil, x.Find("ground script", 5), `"><../`))
	if strings.Count(text, nasty) != 2 || !strings.Contains(text, `<b>"`) {
		t.Errorf("text is %q", text)
	}
	if len(links) != 1 || links[0] != `"><../a"><i>.html` {
		t.Errorf("links are %q", links)
	}
}

func TestAddressStaysRelative(t *testing.T) {
	for _, tt := range []struct{ root, address, want string }{
		{"", "javascript:alert(1)", "./javascript:alert(1)"},
		{"../", "a/b.html", "../a/b.html"},
		{"", "a/b:c.html", "a/b:c.html"},
	} {
		if got := linkTo(tt.root, tt.address); got != tt.want {
			t.Errorf("linkTo(%q, %q) = %q, want %q", tt.root, tt.address, got, tt.want)
		}
	}
}

// FuzzMarkup: whatever a book holds and a person types, the fragment is well
// formed and shows the title unchanged.
func FuzzMarkup(f *testing.F) {
	f.Add("Ground <point> & more", "Drill > 3 mm \"now\"", "ground drill")
	f.Add("a\x00b", "\xff", "a")
	f.Fuzz(func(t *testing.T, title, body, query string) {
		x := Build([]Doc{{Kind: Sheet, Title: title, Address: "a.html", Text: body, Words: []string{"always"}}}, nil)
		for _, q := range []string{query, "always"} {
			hits := x.Find(q, 5)
			for _, h := range hits {
				checkSpans(t, h.Title, h.TitleMarks)
			}
			wellFormed(t, AppendMarkup(nil, hits, "../"))
		}
	})
}
