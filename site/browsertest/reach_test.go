package browsertest

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp/kb"
)

// prefer sets what the reader asks of pages, such as prefers-color-scheme: dark.
func prefer(p *tab, feature, value string) {
	p.t.Helper()
	call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: feature, Value: value}, {Name: "prefers-reduced-motion", Value: "reduce"}},
	})
}

// everyPage lists the pages of the shipped book.
func everyPage(t *testing.T) []string {
	t.Helper()
	var pages []string
	err := fs.WalkDir(os.DirFS(shipped(t)), ".", func(name string, _ fs.DirEntry, err error) error {
		if filepath.Ext(name) == ".html" {
			pages = append(pages, name)
		}
		return err
	})
	if err != nil || len(pages) < 80 {
		t.Fatal(len(pages), err)
	}
	return pages
}

// tooWide names the elements that stick out of the page to the right, where it
// can be scrolled sideways.
const tooWide = `(() => {
	const width = document.documentElement.clientWidth;
	if (document.documentElement.scrollWidth <= width) return [];
	return [...document.querySelectorAll("body *")].filter((e) => e.checkVisibility() && e.getBoundingClientRect().right > width + 1 && !e.closest(".wide, pre, table"))
		.map((e) => e.outerHTML.slice(0, 90)).slice(0, 3).concat(document.documentElement.scrollWidth + " px");
})()`

// No page is wider than a screen of 320 CSS pixels, which is also what 400 %
// of zoom leaves of 1280 (WCAG 2.2, 1.4.10).
func TestNoScrollingSideways(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	p.resize(size{320, 256})
	for _, page := range everyPage(t) {
		p.open(root + page)
		if wide := eval[[]string](p, tooWide); len(wide) > 0 {
			t.Errorf("%s: %v", page, wide)
		}
	}
	states := []struct {
		name, page string
		enter      func()
	}{
		{"find open", "power/fuse-tap.html", func() { search(p, "ground") }},
		{"step view", "power/fuse-tap.html", func() { p.tap("[data-do=steps]"); p.key(kb.ArrowRight); p.wait(current + ` === "step-1"`) }},
		{"a circuit's step", "power/relay-feed.html", func() {}},
		{"error", "calculators/wire-drop.html", func() {
			p.fill("#calculator-1-length", "-3")
			p.wait(`document.querySelector("#calculator-1-length-e").textContent !== ""`)
		}},
		{"a record", "record.html", func() { openJob(p, root, "A vehicle with a long reference, 2019-07-11/4711") }},
	}
	for _, s := range states {
		p.do(`localStorage.clear(); sessionStorage.clear()`)
		p.open(root + s.page)
		s.enter()
		if wide := eval[[]string](p, tooWide); len(wide) > 0 {
			t.Errorf("%s: %v", s.name, wide)
		}
	}
}

// smallTargets lists what is touched and is less than 48 px high or wide. A
// field in a label is touched by the label. Exceptions, after WCAG 2.2, 2.5.8:
// links within a sentence or a table's text, which would tear the text apart;
// the skip link, which only keys reach; a file field, which the browser draws.
const smallTargets = `[...document.querySelectorAll("a, button, input, select, summary, textarea")].filter((e) => e.checkVisibility()).flatMap((e) => {
	if (e.matches(".skip, [type=file]")) return [];
	if (e.matches("a") && getComputedStyle(e).display === "inline" && e.closest("p, li, td, th, dd, figcaption, h3")) return [];
	const r = (e.closest("label") ?? e).getBoundingClientRect();
	return r.width >= 47.5 && r.height >= 47.5 ? [] : [Math.round(r.width) + "×" + Math.round(r.height) + " " + e.outerHTML.slice(0, 100)];
})`

func TestTargetsForAGlove(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	for _, page := range pageKinds {
		p.open(root + page)
		if page == "power/fuse-tap.html" {
			p.wait(`!document.querySelector("[data-do=steps]").hidden`)
		}
		for _, small := range eval[[]string](p, smallTargets) {
			t.Errorf("%s: %s", page, small)
		}
	}
	p.open(root + "power/fuse-tap.html")
	p.tap("[data-do=steps]")
	p.key(kb.ArrowRight)
	p.wait(current + ` === "step-1"`)
	for _, small := range eval[[]string](p, smallTargets) {
		t.Errorf("step view: %s", small)
	}
	p.key(kb.Escape)
	search(p, "ground")
	for _, small := range eval[[]string](p, smallTargets) {
		t.Errorf("find: %s", small)
	}
	startDeck(p, root, "ground")
	answerCard(p, true)
	p.wait(`document.querySelectorAll(".grader button").length === 4`)
	for _, small := range eval[[]string](p, smallTargets) {
		t.Errorf("study: %s", small)
	}
}

// faint lists texts of steps and safety messages with too little contrast:
// under 7 to 1, or under 4.5 for large ones (WCAG 2.2, 1.4.6, level AAA),
// by the formula of its glossary.
const faint = `(() => {
	const parse = (c) => (c.match(/[\d.]+/g) ?? []).map(Number);
	const light = ([r, g, b]) => [r, g, b].map((v) => v / 255).map((v) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4)).reduce((s, v, i) => s + v * [0.2126, 0.7152, 0.0722][i], 0);
	const ground = (e) => { for (; e; e = e.parentElement) { const c = parse(getComputedStyle(e).backgroundColor); if (c.length === 3 || c[3] === 1) return c; } return [255, 255, 255]; };
	const out = [];
	const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
	for (let n = walk.nextNode(); n; n = walk.nextNode()) {
		const e = n.parentElement;
		if (!n.data.trim() || !e.closest(".step .what, .message, .hurts") || !e.checkVisibility() || e.closest("svg, option, [data-stale]")) continue;
		const s = getComputedStyle(e), px = parseFloat(s.fontSize);
		const [a, b] = [light(parse(s.color)), light(ground(e))].sort((x, y) => y - x);
		const ratio = (a + 0.05) / (b + 0.05);
		const large = px >= 24 || (px >= 18.66 && Number(s.fontWeight) >= 700);
		out.push([ratio, large ? 4.5 : 7, e.className + " “" + n.data.trim().slice(0, 40) + "” " + s.color + " on " + ground(e)]);
	}
	return {looked: out.length, faint: out.filter(([r, want]) => r < want).map(([r, want, words]) => r.toFixed(2) + ", wanted " + want + ": " + words)};
})()`

func TestStepsAndMessagesStandOut(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	for _, look := range []string{"light", "dark"} {
		prefer(p, "prefers-color-scheme", look)
		for _, page := range []string{"power/fuse-tap.html", "passage/new-hole.html", "speakers/amplifier.html", "safety/high-voltage-vehicles.html", "access/door-panel.html"} {
			p.open(root + page)
			p.do(`document.querySelectorAll(".hurts").forEach((d) => { d.open = true })`)
			p.do(`document.querySelectorAll(".tick").forEach((t, i) => { if (i % 2) t.click() })`)
			got := eval[struct {
				Looked int
				Faint  []string
			}](p, faint)
			if got.Looked < 20 {
				t.Errorf("%s: only %d texts were looked at", page, got.Looked)
			}
			for _, f := range got.Faint {
				t.Errorf("%s, %s: %s", look, page, f)
			}
			p.do(`localStorage.clear()`)
		}
	}
}

// Walking by the Tab key nothing that has the focus lies under the bars at the
// top and the bottom, and each stop is outlined (WCAG 2.2, 2.4.7 and 2.4.11).
func TestFocusIsSeen(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	prefer(p, "prefers-color-scheme", "light")
	for _, page := range []string{"power/fuse-tap.html", "calculators/wire-drop.html", "index.html", "record.html", "study.html"} {
		p.open(root + page)
		p.wait(`document.querySelector(".bar")`)
		stops := 0
		for range 90 {
			p.key(kb.Tab)
			got := eval[struct{ Gone, Hidden, Plain, Name string }](p, `(() => {
				const e = document.activeElement;
				if (!e || e === document.body) return {gone: "yes"};
				const name = e.outerHTML.slice(0, 100), s = getComputedStyle(e);
				if (e.closest(".head, .bar") || e.matches(".skip")) return {name};
				const r = e.getBoundingClientRect(), top = document.querySelector(".head").getBoundingClientRect().bottom, bottom = document.querySelector(".bar").getBoundingClientRect().top;
				const room = bottom - top;
				const hidden = (r.top < top - 1 && r.height <= room) || (r.bottom > bottom + 1 && r.height <= room) ? Math.round(r.top) + " to " + Math.round(r.bottom) + " between " + Math.round(top) + " and " + Math.round(bottom) : "";
				return {name, hidden, plain: s.outlineStyle === "none" || parseFloat(s.outlineWidth) < 2 ? "yes" : ""};
			})()`)
			if got.Gone != "" {
				break
			}
			stops++
			if got.Hidden != "" {
				t.Errorf("%s: %s lies at %s", page, got.Name, got.Hidden)
			}
			if got.Plain != "" {
				t.Errorf("%s: %s shows no focus", page, got.Name)
			}
		}
		if stops < 8 {
			t.Errorf("%s: the Tab key stops only %d times", page, stops)
		}
	}
}

// The first stop of the Tab key leads past the head of the page.
func TestSkipLink(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	p.key(kb.Tab)
	p.wait(`document.activeElement.matches(".skip") && document.activeElement.getBoundingClientRect().left >= 0`)
	p.key(kb.Enter)
	p.wait(`location.hash === "#main"`)
	p.key(kb.Tab)
	p.wait(`document.activeElement.closest("main")`)
}

// A field that is typed into stays in sight, under the display that says the
// outcome and above what lies at the foot of the screen.
func TestTypedFieldStaysInSight(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	prefer(p, "prefers-color-scheme", "light")
	p.open(serve(t, shipped(t), "/").root + "calculators/wire-drop.html")
	p.resize(size{360, 420}) // a phone with its keyboard up
	for _, field := range []string{"current", "length", "temperature", "limit"} {
		p.do(fmt.Sprintf(`document.querySelector("#calculator-1-%s").focus()`, field))
		p.wait(fmt.Sprintf(`(() => {
			const r = document.querySelector("#calculator-1-%s").getBoundingClientRect();
			const display = document.querySelector(".display").getBoundingClientRect(), head = document.querySelector(".head").getBoundingClientRect();
			return r.top >= Math.max(head.bottom, display.bottom) - 1 && r.bottom <= innerHeight && document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2).closest(".input, label, input, .field");
		})()`, field))
	}
}
