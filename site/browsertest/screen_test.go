package browsertest

import (
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// A stepScreen is what the step view shows before anything is scrolled.
type stepScreen struct {
	ID string
	// Sentence is whether the step's sentence is seen whole, Titles whether
	// the signal word and the titles of its first message are, above it.
	Sentence, Titles bool
	Messages         int
	// Whole is whether all messages are seen whole, above the sentence; Over
	// by how many pixels they and the sentence are higher than the screen.
	Whole bool
	Over  float64
	// Ends is whether the end of the last message and the sentence are seen
	// together once one has scrolled to it.
	Ends bool
	// Last is whether no screen follows.
	Last bool
}

// lookAtStep fills in a stepScreen.
const lookAtStep = `(() => {
	const s = document.querySelector("[data-current]"), what = s.querySelector(".what");
	const last = document.querySelector(".stepper .next").textContent.trim() === "Done";
	if (!what) return {id: s.id, sentence: true, last};
	const head = document.querySelector(".head");
	const top = head.checkVisibility() ? head.getBoundingClientRect().bottom : 0;
	const bottom = document.querySelector(".stepper").getBoundingClientRect().top;
	const sentence = what.querySelector(":scope > p:not([class])"), messages = [...what.querySelectorAll(":scope > .message")];
	const box = (e) => e.getBoundingClientRect();
	const seen = (r, below = bottom) => r.top >= top - 1 && r.bottom <= below + 1;
	const covered = (e) => { const r = box(e), at = document.elementFromPoint(r.left + 20, (r.top + r.bottom) / 2); return !e.contains(at); };
	const out = {id: s.id, last, messages: messages.length, sentence: seen(box(sentence)) && !covered(sentence)};
	if (messages.length === 0) return out;
	out.titles = seen(box(messages[0].querySelector(".signal")), box(sentence).top) && seen(box(messages[0].querySelector(".titles")), box(sentence).top);
	out.whole = messages.every((m) => seen(box(m), box(sentence).top));
	out.over = box(messages.at(-1)).bottom - box(messages[0]).top + box(sentence).height - (bottom - box(messages[0]).top);
	if (!out.whole) window.scrollBy({top: box(messages.at(-1)).bottom - box(sentence).top, behavior: "instant"});
	const end = box(messages.at(-1)).bottom;
	out.ends = seen(box(sentence)) && end > top && end <= box(sentence).top + 1;
	return out;
})()`

// walkSteps goes through the step view from the screen that it shows to the
// last one and looks at each. It taps the button, since the keys have tests of
// their own, and waits until the next screen stands.
const walkSteps = `(async () => {
	const screens = [], shown = () => document.querySelector("[data-current]").id;
	for (;;) {
		screens.push(` + lookAtStep + `);
		if (screens.at(-1).last) return screens;
		const from = shown();
		document.querySelector(".stepper .next").click();
		while (shown() === from) await new Promise((r) => setTimeout(r, 5));
		await new Promise((r) => requestAnimationFrame(r));
	}
})()`

// On a phone a safety message and the sentence of its step stand on one
// screen, in every step of the book. Where messages are longer than a screen
// the sentence stays in sight while one reads to their end.
func TestMessageAndSentenceShareAScreen(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	guarded, whole := 0, 0
	for _, page := range sheetsWith(t, p, root, ".step") {
		p.open(root + page)
		p.tap("[data-do=steps]")
		p.wait(current)
		for _, s := range eval[[]stepScreen](p, walkSteps) {
			if !s.Sentence {
				t.Errorf("%s#%s: the step's sentence is not on its first screen", page, s.ID)
			}
			if s.Messages > 0 {
				guarded++
				if !s.Titles {
					t.Errorf("%s#%s: signal word and titles of the message are not on the screen of the sentence", page, s.ID)
				}
				if !s.Whole && s.Over < -12 { // less than the space between them
					t.Errorf("%s#%s: message and sentence have room on one screen and are not on it", page, s.ID)
				}
				if !s.Ends {
					t.Errorf("%s#%s: the message cannot be read to its end with the sentence in sight", page, s.ID)
				}
				if s.Whole {
					whole++
				}
			}
		}
		p.key(kb.Escape)
		p.wait(`document.body.dataset.view === undefined`)
	}
	// Most messages are short enough to be seen whole: what stands around them
	// must leave them the room.
	if guarded < 60 || whole < guarded*2/3 {
		t.Errorf("of %d steps with messages %d show all of them at once", guarded, whole)
	}
}
