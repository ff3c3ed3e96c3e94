package render

import (
	"bytes"
	"maps"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"baybook/calculators/calctest"

	"baybook/site/sheet"
	"baybook/theme"
)

// specFile is the CommonMark specification, whose examples are its test suite.
const specFile = "../../theme/node_modules/commonmark-spec/spec.txt"

// example is one of them.
type example struct {
	number         int
	markdown, html string
}

// specFence sets an example off from the text around it.
const specFence = "````````````````````````````````"

// examples reads the specification, in which → stands for a tab.
func examples(t *testing.T) []example {
	t.Helper()
	spec, err := os.ReadFile(specFile)
	if err != nil {
		calctest.Missing(t, "the CommonMark specification is not there: run npm ci in theme/")
	}
	var list []example
	parts := strings.Split(strings.ReplaceAll(string(spec), "→", "\t"), specFence)
	for i := 1; i+1 < len(parts); i += 2 {
		text, ok := strings.CutPrefix(parts[i], " example\n")
		if !ok {
			t.Fatalf("not an example: %.60q", parts[i])
		}
		markdown, html, ok := strings.Cut(text, "\n.\n")
		if !ok {
			markdown, html, ok = "", strings.TrimPrefix(text, ".\n"), strings.HasPrefix(text, ".\n")
		}
		if !ok {
			t.Fatalf("an example without its answer: %.60q", text)
		}
		list = append(list, example{len(list) + 1, markdown + "\n", html})
	}
	return list
}

// differences are the examples that a sheet reads otherwise, each with its
// reason. One that starts to agree must leave the list.
var differences = differ(map[string][]int{
	"a section's heading is one line":     {95},
	"a link to a sheet leads to its page": {484},
})

// differ turns the list round.
func differ(reasons map[string][]int) map[int]string {
	by := make(map[int]string)
	for reason, numbers := range reasons {
		for _, n := range numbers {
			by[n] = reason
		}
	}
	return by
}

func TestCommonMark(t *testing.T) {
	list := examples(t)
	const inTheSpec = 652 // CommonMark 0.31.2
	if len(list) != inTheSpec {
		t.Fatalf("%d examples, want %d", len(list), inTheSpec)
	}
	press, err := NewRenderer(theme.Files, &sheet.Book{Register: &sheet.Register{}, Glossary: &sheet.Glossary{}, Shop: &sheet.Shop{}}, nil, Assets{})
	if err != nil {
		t.Fatal(err)
	}
	reader := sheet.NewReader(nil)
	raw, titles := 0, 0
	for _, e := range list {
		s, found := reader.Parse("spec/example.md", []byte("---\ntitle: x\n---\n"+e.markdown))
		markup, title := false, false
		for _, f := range found {
			markup, title = markup || f.Rule == "raw-html", title || f.Rule == "heading"
		}
		if s.Root == nil {
			t.Errorf("example %d is not read: %v", e.number, found)
			continue
		}
		var out bytes.Buffer
		if err := newMarkdown(&parts{book: press}).Render(&out, s.Source.Text(), s.Root); err != nil {
			t.Fatalf("example %d: %v", e.number, err)
		}
		got, want := plain(out.String()), plain(e.html)
		reason, listed := differences[e.number]
		switch {
		case markup:
			raw++
			if got == want || listed {
				t.Errorf("example %d holds raw HTML; it must be refused, not rendered, and not be listed (%s)", e.number, reason)
			}
		case title:
			titles++ // refused as a sheet, however it is rendered
		case listed && got == want:
			t.Errorf("example %d agrees now; take it off the list (%s)", e.number, reason)
		case !listed && got != want:
			t.Errorf("example %d\n%s\ngives\n%s\nwant\n%s", e.number, e.markdown, got, want)
		}
	}
	t.Logf("%d examples: %d refused for raw HTML, %d for a heading of the first level, %d differ", len(list), raw, titles, len(differences))
	if raw == 0 || raw+titles > len(list)/4 {
		t.Errorf("%d and %d examples are refused", raw, titles)
	}
	for _, n := range slices.Sorted(maps.Keys(differences)) {
		if n < 1 || n > inTheSpec || differences[n] == "" {
			t.Errorf("the list of differences names example %d for %q", n, differences[n])
		}
	}
}

// dress is what pages put around CommonMark's elements, and what they call it;
// without it the two must agree.
var dress = []struct {
	pattern *regexp.Regexp
	plain   string
}{
	{regexp.MustCompile(`<section id="[^"]*" aria-labelledby="[^"]*"><h2 id="[^"]*">`), "<h2>"},
	{regexp.MustCompile(`</section>\n?`), ""},
	{regexp.MustCompile(`<pre class="listing" tabindex="0"><code>`), "<pre><code>"},
	{regexp.MustCompile(`<code class="language-[^"]*">`), "<code>"},
	{regexp.MustCompile(`<figure class="drawing"><img loading="lazy" src="([^"]*)" alt="([^"]*)"><figcaption>([^<]*)</figcaption></figure>`), `<p><img src="$1" alt="$2" title="$3"></p>`},
	{regexp.MustCompile(`<figure class="drawing"><img loading="lazy" src="([^"]*)" alt="([^"]*)"></figure>`), `<p><img src="$1" alt="$2"></p>`},
	{regexp.MustCompile(` rel="noreferrer"`), ""},
	{regexp.MustCompile(` />`), ">"},
	{regexp.MustCompile(`&#34;`), "&quot;"},
	{regexp.MustCompile(`&#39;`), "'"},
	{regexp.MustCompile(`>\s+<`), "><"},
	{regexp.MustCompile(`\s+</`), "</"},
	{regexp.MustCompile(`(<(?:li|blockquote)>)\s+`), "$1"},
}

// plain takes the dress off.
func plain(html string) string {
	for _, d := range dress {
		html = d.pattern.ReplaceAllString(html, d.plain)
	}
	return strings.TrimSpace(html)
}
