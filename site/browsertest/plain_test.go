package browsertest

import (
	"net/url"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp/kb"
)

func withoutScripts(p *tab) {
	p.t.Helper()
	call(p, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true})
}

// With scripts off everything but live results, search and memory is there.
func TestScriptsOff(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/shop/book/").root
	withoutScripts(p)
	p.open(root + "calculators/wire-drop.html")
	if want := answer(t, "wire-drop", "", "drop"); !strings.Contains(p.text(".answer"), want) {
		t.Errorf("the computed result %s is not there", want)
	}
	if p.seen(".calculator .plain") != 1 || p.seen(".answer svg") != 1 {
		t.Error("what scripts would do is not said, or the figure is missing")
	}
	p.open(root + "reference/wire-sizes.html")
	if got := p.text("table.computed"); !strings.Contains(got, "mohm") || p.seen("table.computed td") < 6 {
		t.Errorf("the computed table reads %q", got)
	}
	p.open(root + "ground/ground-point.html")
	if p.seen(".step") < 10 || p.seen(".message") < 2 || p.seen(".value") == 0 {
		t.Error("steps, messages or numbers are missing")
	}
	if p.seen(".question blockquote") == 0 {
		t.Error("the reason under a question cannot be read")
	}
	p.tap(".practice .worked summary")
	p.wait(`document.querySelector(".practice .worked").open`)
	if got := p.text(".practice .worked"); !strings.Contains(got, worked(p)) {
		t.Errorf("the worked answer lacks %s: %s", worked(p), got)
	}
	for _, dead := range []string{"[data-do=steps]", ".pin", ".printing", ".fresh", ".try"} {
		if p.seen(dead) != 0 {
			t.Errorf("%s is shown and does nothing without scripts", dead)
		}
	}
	// Links alone lead from the cover through A to Z to a sheet and its calculator.
	p.open(root + "index.html")
	p.tap(".ways a[href='a-z.html']")
	p.wait(`document.querySelector(".letters")`)
	p.tap("main a[href='power/fuse-tap.html']")
	p.wait(`document.documentElement.dataset.sheet === "power/fuse-tap"`)
	p.tap("a.value")
	p.wait(`document.body.dataset.kind === "calculator"`)
	// The search field leads to A to Z.
	p.fill("#find", "ground")
	p.key(kb.Enter)
	p.wait(`location.pathname.endsWith("/a-z.html")`)
}

// address is a page of the shipped book as a memory stick has it.
func address(t *testing.T, page string) string {
	return (&url.URL{Scheme: "file", Path: filepath.ToSlash(filepath.Join(shipped(t), filepath.FromSlash(page)))}).String()
}

func TestFromAFolder(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(address(t, "calculators/wire-drop.html"))
	p.fill("#calculator-1-current", "12")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "current=12A", "drop")))
	hits := search(p, "gnd")
	if !holds(hits, 3, "ground/ground-point.html") {
		t.Errorf("gnd finds %v", hits)
	}
	p.key(kb.ArrowDown + kb.Enter)
	p.wait(`document.documentElement.dataset.sheet?.startsWith("ground/")`)
	p.open(address(t, "power/fuse-tap.html"))
	p.tap("#step-1 .tick")
	p.fill("#reading-feed-contact input", "11")
	p.wait(verdictOf("feed-contact") + ` === "stop"`)
	p.reload()
	p.wait(`document.querySelector("#step-1 .tick").checked && document.querySelector("#reading-feed-contact input").value === "11"`)
	p.open(address(t, "index.html"))
	p.wait(`document.querySelector("[data-kept]").textContent.includes("folder")`)
	p.tap(".areas a")
	p.wait(`document.documentElement.dataset.sheet`)
	startDeck(p, strings.TrimSuffix(address(t, "index.html"), "index.html"), "ground")
	answerCard(p, true)
	p.wait(`document.querySelectorAll(".grader button").length === 4`)
}
