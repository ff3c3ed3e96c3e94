package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// current is the address of the screen that the step view shows.
const current = `document.querySelector("[data-current]")?.id`

func TestTicksLast(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	p.tap("#step-2 .tick")
	p.tap("#step-5 .tick")
	p.tap("#step-5 .tick")
	p.tap("#step-6 .tick")
	p.reload()
	if got := eval[[]string](p, `[...document.querySelectorAll(".tick:checked")].map((e) => e.closest(".step").id)`); strings.Join(got, " ") != "step-2 step-6" {
		t.Errorf("after a reload the ticks are %v", got)
	}
}

// inSteps opens a sheet in the step view.
func inSteps(t *testing.T) (p *tab, root string) {
	t.Helper()
	p, root = newTab(t), serve(t, shipped(t), "/").root
	p.open(root + "power/fuse-tap.html")
	p.tap("[data-do=steps]")
	return p, root
}

func TestStepView(t *testing.T) {
	t.Parallel()
	p, _ := inSteps(t)
	p.wait(current + ` === "before-you-start"`)
	if p.seen("#before-you-start p, #before-you-start li") == 0 || p.seen(".step") != 0 {
		t.Error("the first screen is not what to know first, alone")
	}
	steps := p.count(".step")
	for n := 1; n <= 3; n++ {
		p.tap(".stepper .next")
		p.wait(fmt.Sprintf(current+` === "step-%d"`, n))
	}
	if p.seen(".step") != 1 || p.seen("#prove-it") != 0 {
		t.Error("more than one step is on the screen")
	}
	if got := p.text(".stepper .said"); got != fmt.Sprintf("Step 3 of %d", steps) {
		t.Errorf("the place reads %q", got)
	}
	p.tap(".stepper button:first-of-type")
	p.wait(current + ` === "step-2"`)
	p.key(kb.ArrowRight)
	p.wait(current + ` === "step-3"`)
	p.key(kb.PageDown)
	p.wait(current + ` === "step-4"`)
	p.key(kb.ArrowLeft)
	p.key(kb.PageUp)
	p.wait(current + ` === "step-2"`)
	// An arrow in a field moves in the field.
	p.key(kb.ArrowRight)
	p.wait(current + ` === "step-3"`)
	p.tap("#step-3 .reading input")
	p.key(kb.ArrowLeft)
	p.wait(current + ` === "step-3"`)
	p.tap("#step-3 .tick")
	p.key(kb.Escape)
	p.wait(`document.body.dataset.view === undefined`)
	if p.seen(".step") != steps {
		t.Error("the whole sheet does not come back")
	}
}

func TestStepViewResumes(t *testing.T) {
	t.Parallel()
	p, root := inSteps(t)
	for range 4 {
		p.key(kb.ArrowRight)
	}
	p.wait(current + ` === "step-4"`)
	if p.seen("#step-4 .calculator") != 1 {
		t.Error("the step's calculator is not on its screen")
	}
	p.tap("#step-4 .tick")
	p.reload()
	p.wait(`document.body.dataset.view === "step" && ` + current + ` === "step-4" && document.querySelector("#step-4 .tick").checked`)
	p.open(root + "index.html")
	p.open(root + "power/fuse-tap.html")
	p.wait(current + ` === "step-4"`)
	for range p.count(".step") - 4 {
		p.key(kb.ArrowRight)
	}
	p.key(kb.ArrowRight)
	p.wait(current + ` === "prove-it"`)
	p.key(kb.ArrowRight)
	p.wait(current + ` === "hand-over"`)
	p.wait(`document.querySelector(".stepper .next").textContent.trim() === "Done"`)
	p.key(kb.ArrowRight)
	p.wait(`document.body.dataset.view === undefined`)
	p.reload()
	p.wait(`document.querySelector("[data-do=steps]") && !document.querySelector("[data-do=steps]").hidden`)
	if eval[bool](p, `document.body.dataset.view === "step"`) {
		t.Error("a sheet that was done opens in the step view")
	}
}

// An address of a step jumps there, whatever step one had come to; one of
// another part of the sheet shows that part. Going on afterwards is kept.
func TestStepAddressesWin(t *testing.T) {
	t.Parallel()
	p, root := inSteps(t)
	p.wait(current + ` === "before-you-start"`)
	p.key(kb.ArrowRight + kb.ArrowRight)
	p.wait(current + ` === "step-2"`)
	p.open(root + "index.html")
	p.open(root + "power/fuse-tap.html#step-6")
	p.wait(current + ` === "step-6"`)
	p.key(kb.ArrowRight)
	p.wait(current + ` === "step-7"`)
	p.reload()
	p.wait(current + ` === "step-7"`)
	p.do(`location.hash = "#step-3"`) // a link within the sheet
	p.wait(current + ` === "step-3"`)
	p.do(`location.hash = "#sources"`)
	p.wait(`document.body.dataset.view === undefined && document.querySelector("#sources").checkVisibility()`)
	p.tap("[data-do=steps]")
	p.wait(current + ` === "step-3"`)
	// A card of the study deck is shown alone, also in a sheet that one had left
	// in the step view.
	card := eval[string](p, `document.querySelector(".question").id`)
	p.do(`sessionStorage.setItem("own:study-deck", JSON.stringify({left: ["power/fuse-tap.html#" + ` + js(card) + `], done: 0}))`)
	p.open(root + "index.html")
	p.open(root + "power/fuse-tap.html#" + card)
	p.wait(`document.body.dataset.view === "study" && document.querySelector(".grader")`)
	if p.seen(".stepper") != 0 || p.seen("[data-current]") != 1 {
		t.Error("study and step view lie over each other")
	}
}

// Every message that guards a step stands on the step's own screen: the one
// inside the step, and those before the steps whose hazard the step shows. Once
// shown in full, a message comes back as one line that names it and opens.
func TestGuardsStandOnTheStep(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	guarded := 0
	for _, sheet := range []string{"power/fuse-tap", "passage/new-hole", "power/battery-feed", "access/door-panel"} {
		p.open(root + sheet + ".html")
		p.tap("[data-do=steps]")
		p.wait(current)
		for {
			p.wait(`!document.querySelector(".guard") || document.querySelector("[data-current] .guard")`)
			screen := eval[struct {
				ID              string
				Guards, Missing []string
				Last            bool
			}](p, `(() => {
				const s = document.querySelector("[data-current]");
				const guards = (s.dataset.guards ?? "").split(" ").filter(Boolean);
				const shown = [...s.querySelectorAll(".message .titles, .reminder > summary")].filter((m) => m.checkVisibility()).map((m) => m.textContent);
				const missing = guards.filter((id) => !shown.some((words) => words.endsWith([...document.getElementById(id).querySelectorAll(".titles")].at(-1).textContent)));
				return {id: s.id, guards, missing, last: document.querySelector(".stepper .next").textContent.trim() === "Done"};
			})()`)
			guarded += len(screen.Guards)
			if len(screen.Missing) > 0 {
				t.Errorf("%s#%s: the screen lacks %v", sheet, screen.ID, screen.Missing)
			}
			if screen.Last {
				break
			}
			p.key(kb.ArrowRight)
			p.wait(fmt.Sprintf(current+` !== %s`, js(screen.ID)))
		}
		p.key(kb.ArrowRight)
		p.wait(`document.body.dataset.view === undefined && !document.querySelector(".guard")`)
	}
	if guarded < 8 {
		t.Errorf("only %d messages guard steps: the test looks at nothing", guarded)
	}
}

// A drawing, a safety message and the step's words fit one screen's width, and
// the buttons are there for a gloved thumb.
func TestStepViewForAThumb(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "passage/new-hole.html")
	p.tap("[data-do=steps]")
	p.key(kb.ArrowRight)
	p.wait(current + ` === "step-1"`)
	for _, b := range eval[[]float64](p, `[...document.querySelectorAll(".stepper > button")].map((b) => b.getBoundingClientRect().height)`) {
		if b < 72 {
			t.Errorf("a button of the step view is %.0f px high", b)
		}
	}
	if got := eval[float64](p, `parseFloat(getComputedStyle(document.querySelector("[data-current] .what > p")).fontSize)`); got < 20 {
		t.Errorf("the step's words are %.0f px high", got)
	}
}

// The screen is kept awake while the step view is seen, and let go after it.
func TestStepViewKeepsTheScreenAwake(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	beforeScripts(p, `window.awake = 0; Object.defineProperty(navigator, "wakeLock", {value: {request: async () => { awake++; return {release: async () => { awake--; }}; }}});`)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	if eval[int](p, "awake") != 0 {
		t.Error("the screen is kept awake over the whole sheet")
	}
	p.tap("[data-do=steps]")
	p.wait("awake === 1")
	p.key(kb.ArrowRight)
	p.wait(current + ` === "step-1"`)
	p.key(kb.Escape)
	p.wait("awake === 0")
}
