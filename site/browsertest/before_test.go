package browsertest

import (
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"testing"

	"baybook/calculators"
	"baybook/site/check"
	"baybook/site/check/work"
	"baybook/site/sheet"
)

// shownHazards chooses work on the page by the numbers of its entries and gives
// the titles of the hazards that it then shows.
const shownHazards = `((choice) => {
	const form = document.querySelector("[data-before] form");
	form.reset();
	for (const [id, value] of Object.entries(choice)) form.querySelector("#" + id).value = String(value);
	form.querySelector("#act").dispatchEvent(new Event("change", {bubbles: true}));
	return [...document.querySelectorAll("[data-before] .message:not([hidden]) .titles")].map((t) => t.textContent.replace(/\.$/, "")).sort();
})`

// TestBeforeIDoThis holds the page against the check's own judgment, for work
// of every act at places, with tools and in states chosen by chance.
func TestBeforeIDoThis(t *testing.T) {
	t.Parallel()
	book, _, err := sheet.Load(os.DirFS("../../content"), calculators.All)
	if err != nil {
		t.Fatal(err)
	}
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "before.html")
	p.wait(`document.querySelector("[data-said]").textContent.startsWith("Choose")`)
	entries := book.Work.Numbered()
	rnd := rand.New(rand.NewPCG(12, 5))
	some := func(k work.Kind) (int, string) {
		for {
			if i := rnd.IntN(len(entries)); entries[i].Kind == k {
				return i, entries[i].ID
			}
		}
	}
	hazards := 0
	for i, act := range entries {
		if act.Kind != work.Act {
			continue
		}
		for range 4 {
			thing, at := some(work.Thing)
			other, near := some(work.Thing)
			tool, with := some(work.Tool)
			state, in := some(work.State)
			does := work.Declaration{Act: act.ID, At: []string{at, near}, With: []string{with}, State: []string{in}}
			var want []string
			for _, c := range check.CausesOf(book, []work.Declaration{does}, nil) {
				want = append(want, c.Hazard.Title)
			}
			slices.Sort(want)
			choice := fmt.Sprintf(`{"act":%d,"thing-1":%d,"thing-2":%d,"tool-1":%d,"state-1":%d}`, i, thing, other, tool, state)
			if got := eval[[]string](p, shownHazards+"("+choice+")"); !slices.Equal(got, want) {
				t.Errorf("%s:\nthe page shows %q,\nthe check     %q", does.String(), got, want)
			}
			hazards += len(want)
		}
	}
	if hazards < 200 {
		t.Errorf("only %d hazards were compared", hazards)
	}
}
