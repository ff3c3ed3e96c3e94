package browsertest

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"baybook/calculators"
	"baybook/calculators/calc"

	"github.com/chromedp/chromedp/kb"
)

// startDeck begins a deck of one area's cards.
func startDeck(p *tab, root, area string) {
	p.t.Helper()
	p.open(root + "study.html")
	p.choose("#area", area)
	p.wait(`document.querySelector("[data-said]").textContent.includes("for today")`)
	p.tap("[data-study] form button")
	p.wait(`document.body.dataset.view === "study" && document.querySelector(".grader")`)
}

// answerCard answers the card that is shown, rightly or wrongly, and reports
// what kind of card it is.
func answerCard(p *tab, right bool) string {
	p.t.Helper()
	if !eval[bool](p, `document.querySelector("[data-current]").matches(".practice")`) {
		want := "no"
		if right {
			want = "yes"
		}
		for i := range eval[int](p, `document.querySelectorAll("[data-current] .option").length`) {
			option := fmt.Sprintf("[data-current] .option:nth-of-type(%d)", i+1)
			if eval[string](p, `document.querySelector(`+js(option)+`).dataset.right`) == want {
				p.tap(option)
				if !right {
					break
				}
			}
		}
		p.tap("[data-current] > button")
		p.wait(`document.querySelector("[data-current] blockquote")?.checkVisibility()`)
		return "question"
	}
	words := "1e9"
	if right {
		words = worked(p)
	}
	p.fill("[data-current] .try input", words)
	p.key(kb.Enter)
	p.wait(`document.querySelector("[data-current] .marking").textContent !== ""`)
	return "problem"
}

// worked is the right answer to the practice problem shown, by the core as it
// runs natively.
func worked(p *tab) string {
	p.t.Helper()
	card := eval[struct{ Calculator, Drawn, Output string }](p, `(({calculator, drawn, output}) => ({calculator, drawn, output}))(document.querySelector("[data-current], .practice").dataset)`)
	pairs, msg := calc.ParseQuery(card.Drawn)
	c := calculators.Named(card.Calculator)
	if msg != "" || c == nil {
		p.t.Fatalf("a problem of %q: %s", card.Calculator, msg)
	}
	_, result, problems := c.Answer(pairs)
	if result == nil {
		p.t.Fatal(problems)
	}
	i := c.Output(card.Output)
	return c.Outputs[i].Format(result.Outputs[i])
}

func TestStudyGoesThroughADeck(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/shop/book/").root
	startDeck(p, root, "ground")
	cards := eval[int](p, `JSON.parse(sessionStorage.getItem("own:study-deck")).left.length`)
	kinds := make(map[string]int)
	var first string
	for n := range cards {
		if n == 0 {
			first = eval[string](p, `document.documentElement.dataset.sheet + ".html" + location.hash`)
		}
		if p.seen(".step, .facts, .titleblock") != 0 || p.seen("[data-current]") != 1 {
			t.Error("the card is not alone on its screen")
		}
		kinds[answerCard(p, true)]++
		p.wait(`document.querySelectorAll(".grader button").length === 4`)
		here := eval[string](p, "location.href")
		p.tap(".grader button")
		if n+1 < cards {
			p.wait(`location.href !== ` + js(here) + ` && document.querySelector(".grader")?.textContent.includes("` + fmt.Sprint(cards-n-1) + ` card")`)
		}
	}
	p.wait(`document.querySelector("[data-study]") && document.querySelector("[data-said]").textContent.includes("cards")`)
	if kinds["question"] == 0 || kinds["problem"] == 0 {
		t.Errorf("the deck asked %v", kinds)
	}
	// SM-2, first repetition: one day, and 2.5 becomes 2.6 for a quality of 5
	// (Wozniak 1990, the algorithm as published in 1987).
	kept := eval[struct{ Card, Due string }](p, `JSON.parse(localStorage.getItem("own:card:" + `+js(first)+`))`)
	if kept.Card != "1 2.6000 1" || kept.Due != time.Now().AddDate(0, 0, 1).Format(time.DateOnly) {
		t.Errorf("a card known at once is kept as %+v", kept)
	}
	p.choose("#area", "ground")
	p.wait(`document.querySelector("[data-said]").textContent.includes("` + fmt.Sprintf("%d met so far, 0 for today", cards) + `")`)
}

func TestStudyAsksAgainWhatWasWrong(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	startDeck(p, root, "ground")
	first := eval[string](p, `document.documentElement.dataset.sheet + ".html" + location.hash`)
	answerCard(p, false)
	p.wait(`document.querySelectorAll(".grader button").length === 2`)
	p.tap(".grader button")
	p.wait(`JSON.parse(sessionStorage.getItem("own:study-deck")).left.at(-1) === ` + js(first))
	p.wait(`document.querySelector(".grader")`)
	// By keys alone: stop the deck.
	p.do(`[...document.querySelectorAll(".grader button")].at(-1).focus()`)
	p.key(kb.Enter)
	p.wait(`document.querySelector("[data-study]")`)
	if got := eval[bool](p, `!sessionStorage.getItem("own:study-deck")`); !got {
		t.Error("a deck that was stopped goes on")
	}
}

func TestStudyComesBackWhenDue(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	p.open(root + "study.html")
	card := eval[string](p, `document.querySelector("[data-card][data-area=ground]").dataset.card`)
	yesterday := time.Now().AddDate(0, 0, -1).Format(time.DateOnly)
	p.do(`localStorage.setItem("own:card:" + ` + js(card) + `, JSON.stringify({card: "1 2.5000 1", due: ` + js(yesterday) + `}))`)
	startDeck(p, root, "ground")
	if got := eval[string](p, `document.documentElement.dataset.sheet + ".html" + location.hash`); got != card {
		t.Errorf("the deck starts with %s, due is %s", got, card)
	}
	answerCard(p, true)
	p.wait(`document.querySelectorAll(".grader button").length === 4`)
	p.tap(".grader button:nth-of-type(2)")
	// SM-2, second repetition: six days; a quality of 4 leaves 2.5 as it is.
	p.wait(`JSON.parse(localStorage.getItem("own:card:" + ` + js(card) + `)).card === "2 2.5000 6"`)
}

func TestPracticeDrawsFreshNumbers(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "ground/ground-point.html")
	drawn := map[string]bool{}
	for range 4 {
		before := eval[string](p, `document.querySelector(".practice").dataset.drawn`)
		p.tap(".practice .fresh")
		p.wait(`document.querySelector(".practice").dataset.drawn !== ` + js(before))
		drawn[eval[string](p, `document.querySelector(".practice").dataset.drawn`)] = true
	}
	if len(drawn) < 3 {
		t.Errorf("four draws give %d problems", len(drawn))
	}
	p.fill(".practice .try input", worked(p))
	p.key(kb.Enter)
	p.wait(`document.querySelector(".practice .marking").textContent.includes("ight")`)
	if got := p.text(".practice .marking"); !strings.Contains(got, "=") {
		t.Errorf("the marking shows no working: %s", got)
	}
	p.fill(".practice .try input", "-17 V")
	p.key(kb.Enter)
	p.wait(`!document.querySelector(".practice .marking").textContent.startsWith("Right")`)
}

// Progress goes from one device to another by a file; nothing in the file that
// is no card of this book spoils the deck.
func TestStudyProgressSavesAndLoads(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	root := serve(t, shipped(t), "/").root
	dir := downloads(p)
	p.open(root + "study.html")
	card := eval[string](p, `document.querySelector("[data-card][data-area=ground]").dataset.card`)
	key := js("own:card:" + card)
	p.do(`localStorage.setItem(` + key + `, JSON.stringify({card: "2 2.5000 6", due: "2099-01-01"}))`)
	p.tap("[data-do=save]")
	name, data := saved(t, dir, ".json")
	q := newTab(t)
	q.open(root + "study.html")
	upload(q, "[data-do=load]", name)
	q.wait(`document.querySelector("[data-said]").textContent.includes(" 1 met so far")`)
	if got := eval[string](q, `localStorage.getItem(`+key+`)`); !strings.Contains(got, "2 2.5000 6") {
		t.Errorf("the card is loaded as %q from %s", got, data)
	}
	for content, said := range map[string]string{
		"nonsense": "holds no study progress",
		`{"format":"baybook-study-1","cards":null}`:                                                          "holds no study progress",
		`{"format":"baybook-record-1","cards":{}}`:                                                           "holds no study progress",
		`{"format":"baybook-study-1","cards":{` + js(card) + `:"{\"card\":\"x\",\"due\":\"y\"}","other":7}}`: "2 cards",
	} {
		junk := filepath.Join(t.TempDir(), "junk.json")
		if err := os.WriteFile(junk, []byte(content), 0o644); err != nil {
			t.Fatal(err)
		}
		upload(q, "[data-do=load]", junk)
		q.wait(`document.querySelector("[data-said]").textContent.includes(` + js(said) + `)`)
	}
	if got := eval[string](q, `localStorage.getItem(`+key+`)`); !strings.Contains(got, "2 2.5000 6") {
		t.Errorf("a file of nonsense made the card %q", got)
	}
}
