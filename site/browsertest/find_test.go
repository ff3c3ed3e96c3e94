package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// search types words into the search field and waits for their answer.
func search(p *tab, words string) []string {
	p.t.Helper()
	p.fill("#find", words)
	p.wait(`document.querySelector(".said").textContent !== "" && !document.querySelector(".hits").hidden`)
	// The answer to the last letter stands when asking again changes nothing.
	p.wait(`(async () => { const h = document.querySelector(".hits"), a = h.innerHTML; await new Promise((r) => setTimeout(r, 100)); return a === h.innerHTML; })()`)
	return eval[[]string](p, `[...document.querySelectorAll(".hits a")].map((a) => a.getAttribute("href"))`)
}

// holds reports whether one of the first n addresses contains part.
func holds(hits []string, n int, part string) bool {
	for i, h := range hits {
		if i < n && strings.Contains(h, part) {
			return true
		}
	}
	return false
}

func TestFindWithKeys(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/shop/book/").root + "power/fuse-tap.html")
	hits := search(p, "gnd")
	if !holds(hits, 3, "ground/ground-point.html") {
		t.Fatalf("gnd finds %v", hits)
	}
	p.key(kb.ArrowDown)
	p.wait(`document.activeElement.matches(".hits a")`)
	want := eval[string](p, `document.activeElement.href`)
	p.key(kb.Enter)
	p.wait(fmt.Sprintf(`location.href === %s`, js(want)))
}

func TestFindForgivesAndJumps(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "index.html")
	for _, c := range []struct{ words, page string }{
		{"earth", "ground/"},
		{"ground strap", "ground/"},
		{"gruond point", "ground/ground-point.html"}, // two letters changed places
		{"fuse tpa", "power/fuse-tap.html"},
		{"piggyback fuse", "power/fuse-tap.html"}, // a name that others use
		{"PW-01", "power/fuse-tap.html"},
		{"pw01", "power/fuse-tap.html"},
	} {
		if hits := search(p, c.words); !holds(hits, 3, c.page) {
			t.Errorf("%q finds %v, not %s", c.words, hits, c.page)
		}
	}
	if hits := search(p, "pull the fuse with the fuse puller"); !holds(hits, 1, "power/fuse-tap.html#step-6") {
		t.Errorf("the words of a step find %v", hits)
	}
	if hits := search(p, "xyzzyx"); len(hits) != 0 || p.text(".hits") == "" {
		t.Errorf("nothing is found as %v, %q", hits, p.text(".hits"))
	}
	search(p, "PW-01")
	p.key(kb.Enter) // Enter in the field takes the first answer
	p.wait(`location.pathname.endsWith("/power/fuse-tap.html")`)
}

func TestFindByThumb(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "calculators.html")
	p.tap(".bar [data-do=find]")
	p.wait(`document.activeElement.id === "find"`)
	p.key("reverse trigger")
	p.wait(`document.querySelector(".hits a[href*='reverse-trigger']")`)
	p.tap(".hits a[href*='reverse-trigger']")
	p.wait(`document.documentElement.dataset.sheet === "power/reverse-trigger"`)
	p.wait(`document.querySelector(".hits").hidden`)
	// What was opened is offered again before anything is typed.
	p.tap("#find")
	p.wait(`document.querySelector(".hits .shelf a[href*='reverse-trigger']")`)
	p.key(kb.Escape)
	p.wait(`document.querySelector(".hits").hidden`)
}

func TestPinnedSheetStandsOnTheCover(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	p.open(root + "reference/wire-sizes.html")
	p.tap(".pin")
	p.open(root + "index.html")
	p.wait(`document.querySelector("main .shelf a[href='reference/wire-sizes.html']")`)
	p.open(root + "reference/wire-sizes.html")
	p.tap(".pin")
	p.open(root + "index.html")
	p.wait(`[...document.querySelectorAll("main .shelf h2")].every((h) => h.textContent !== "Pinned")`)
}

// What a sheet's text matches is marked up by the core: nothing typed into the
// field is ever read as markup.
func TestFindShowsTypedMarkupAsText(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "index.html")
	search(p, `<img src=x onerror=alert(1)>`)
	if p.count(".hits img") != 0 {
		t.Error("what is typed becomes markup")
	}
}
