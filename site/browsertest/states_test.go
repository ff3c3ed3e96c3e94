package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// states are what a reader makes of pages beyond opening them.
var states = []struct {
	name  string
	enter func(p *tab, root string)
}{
	{"find open", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		search(p, "ground")
	}},
	{"nothing found", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		search(p, "xyzzyx")
	}},
	{"what to know first, in the step view", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		p.tap("[data-do=steps]")
		p.wait(current + ` === "before-you-start"`)
	}},
	{"a step with its guards", func(p *tab, root string) {
		p.open(root + "passage/new-hole.html")
		p.tap("[data-do=steps]")
		p.wait(current)
		for range p.count(".step") {
			p.key(kb.ArrowRight)
			if p.seen(".guard") > 0 {
				return
			}
		}
		p.t.Error("no step has a guard")
	}},
	{"wrong input", func(p *tab, root string) {
		p.open(root + "calculators/wire-drop.html")
		p.fill("#calculator-1-length", "-3")
		p.wait(`document.querySelector("#calculator-1-length-e").textContent !== ""`)
		p.wait(`document.querySelector(".sum").textContent.startsWith("Not computed")`)
	}},
	{"a verdict that stops", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		p.fill(".step .calculator [name=existing]", "13")
		p.wait(`document.querySelector(".step .calculator .verdict").dataset.verdict === "stop"`)
	}},
	{"a reading out of limits, and ticks", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		p.tap("#step-1 .tick")
		p.fill("#reading-load-contact input", "5")
		p.wait(verdictOf("load-contact") + ` === "stop"`)
	}},
	{"a wiring drawing in another state", func(p *tab, root string) {
		p.open(root + "jobs/bookmobile.html")
		p.tap(".wiring .more summary")
		other := eval[string](p, `document.querySelector(".wiring select[name=state] option:not([selected])").value`)
		before := eval[string](p, `document.querySelector(".wiring .answer").innerHTML`)
		p.choose(".wiring select[name=state]", other)
		p.wait(`document.querySelector(".wiring .answer").innerHTML !== ` + js(before))
	}},
	{"a card answered", func(p *tab, root string) {
		startDeck(p, root, "ground")
		answerCard(p, true)
		p.wait(`document.querySelectorAll(".grader button").length === 4`)
	}},
	{"a problem marked wrong", func(p *tab, root string) {
		p.open(root + "ground/ground-point.html")
		p.fill(".practice .try input", "1e9")
		p.key(kb.Enter)
		p.wait(`document.querySelector(".practice .marking").textContent !== ""`)
	}},
	{"the record of a job", func(p *tab, root string) {
		openJob(p, root, "Van 7")
		p.open(root + "power/fuse-tap.html")
		p.fill("#reading-load-contact input", "5")
		p.wait(verdictOf("load-contact") + ` === "stop"`)
		p.open(root + "record.html")
		p.wait(`document.querySelector("[data-shown] table")`)
	}},
	{"storage that is full", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		p.do(fillStorage)
		p.tap("#step-1 .tick")
		p.wait(`document.querySelector(".storage[role=alert]")`)
	}},
	{"the card of a sheet", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html#card")
		p.wait(`document.body.dataset.view === "card"`)
	}},
	{"shelves on the cover", func(p *tab, root string) {
		p.open(root + "power/fuse-tap.html")
		p.tap(".pin")
		p.open(root + "index.html")
		p.wait(`document.querySelectorAll("main .shelf").length === 2`)
	}},
}

// TestNoBarrierInAnyState runs axe-core over what pages become in use.
func TestNoBarrierInAnyState(t *testing.T) {
	t.Parallel()
	engine := axe(t)
	root := serve(t, shipped(t), "/").root
	for _, s := range states {
		t.Run(s.name, func(t *testing.T) {
			t.Parallel()
			p := newTab(t)
			s.enter(p, root)
			noBarrier(p, engine)
		})
	}
}
