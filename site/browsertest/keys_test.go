package browsertest

import (
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp/kb"
)

// tabTo presses the Tab key until what has the focus matches a selector.
func tabTo(p *tab, selector string) {
	p.t.Helper()
	for range 80 {
		p.key(kb.Tab)
		if eval[bool](p, fmt.Sprintf(`!!document.activeElement?.matches(%s)`, js(selector))) {
			return
		}
	}
	p.t.Fatalf("the Tab key does not come to %s", selector)
}

// A deck is gone through without a pointer.
func TestStudyByKeysAlone(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "study.html")
	tabTo(p, "#area")
	p.key("G") // the first area that begins so: Ground
	p.wait(`document.querySelector("#area").value === "ground"`)
	tabTo(p, "[data-study] form button")
	p.key(kb.Enter)
	for range 3 {
		p.wait(`document.body.dataset.view === "study" && document.querySelector(".grader")`)
		if eval[bool](p, `document.querySelector("[data-current]").matches(".practice")`) {
			tabTo(p, "[data-current] .try input")
			p.key(worked(p) + kb.Enter)
		} else {
			for i := range p.count("[data-current] .option") {
				option := fmt.Sprintf("[data-current] .option:nth-of-type(%d)", i+1)
				tabTo(p, option+" input")
				if eval[string](p, `document.querySelector(`+js(option)+`).dataset.right`) == "yes" {
					p.key(" ")
				}
			}
			tabTo(p, "[data-current] > button")
			p.key(kb.Enter)
		}
		p.wait(`document.activeElement.matches(".grader button")`) // the grades come to the keys
		here := eval[string](p, `document.querySelector("[data-current]").id + document.documentElement.dataset.sheet`)
		p.key(kb.Enter)
		p.wait(`document.querySelector("[data-current]") && document.querySelector("[data-current]").id + document.documentElement.dataset.sheet !== ` + js(here))
	}
}

// moving sets what the reader asks of motion.
func moving(p *tab, value string) {
	p.t.Helper()
	call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-reduced-motion", Value: value}},
	})
}

// Who asks for less motion sees none: nothing glides, fades or scrolls by
// itself (WCAG 2.2, 2.3.3).
func TestReducedMotion(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	for _, motion := range []string{"reduce", "no-preference"} { // a landing is at once for everybody
		moving(p, motion)
		p.open(root + "power/fuse-tap.html")
		if got := eval[string](p, `getComputedStyle(document.documentElement).scrollBehavior`); got != "auto" {
			t.Errorf("with prefers-reduced-motion: %s the page scrolls %q", motion, got)
		}
	}
	moving(p, "reduce")
	for _, page := range pageKinds {
		p.open(root + page)
		if n := eval[int](p, `document.getAnimations().length + [...document.querySelectorAll("*")].filter((e) => { const s = getComputedStyle(e); return s.animationName !== "none" || s.transitionDuration.split(",").some((d) => parseFloat(d) > 0); }).length`); n != 0 {
			t.Errorf("%s: %d things move", page, n)
		}
	}
}
