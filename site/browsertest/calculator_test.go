package browsertest

import (
	"strings"
	"testing"

	"baybook/calculators"
	"baybook/calculators/calc"

	"github.com/chromedp/chromedp/kb"
)

// answer is what the core says natively: the page must say the same.
func answer(t *testing.T, calculator, query, output string) string {
	t.Helper()
	pairs, msg := calc.ParseQuery(query)
	if msg != "" {
		t.Fatal(msg)
	}
	c := calculators.Named(calculator)
	_, result, problems := c.Answer(pairs)
	if result == nil {
		t.Fatal(problems)
	}
	i := c.Output(output)
	return c.Outputs[i].Format(result.Outputs[i])
}

func TestSheetOpens(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "ground/ground-point.html")
	if got := p.text("h1"); !strings.Contains(got, "Ground point") {
		t.Errorf("the title reads %q", got)
	}
	if p.seen(".chip") == 0 || p.seen(".step") < 5 || p.seen(".titleblock") != 1 {
		t.Error("hazards, steps or title block are not shown")
	}
	if top, first := eval[float64](p, `document.querySelector(".hurts").getBoundingClientRect().top`), eval[float64](p, `document.querySelector(".step").getBoundingClientRect().top`); top > first {
		t.Error("what can hurt stands after the steps")
	}
	p.tap(".hurts summary")
	p.tap(".hurts a")
	p.wait(`document.querySelector(location.hash).matches(".message")`)
	p.wait(`document.querySelector(location.hash).getBoundingClientRect().top >= document.querySelector(".head").getBoundingClientRect().bottom - 1`)
}

func TestCalculatorComputes(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/shop/book/").root + "calculators/wire-drop.html")
	for field, words := range map[string]string{"current": "1", "length": "100", "wire": "16", "body_resistance": "0", "temperature": "75"} {
		p.fill("#calculator-1-"+field, words)
	}
	p.choose("#calculator-1-back", "body")
	p.choose("#calculator-1-length-u", "ft")
	// NEC Chapter 9 Table 8: 4.99 ohm for 1000 ft of stranded 16 AWG copper at 75 °C.
	want := answer(t, "wire-drop", "current=1A&length=100ft&wire=16AWG&back=body&body_resistance=0&temperature=75C", "resistance")
	p.wait(`document.querySelector("[data-output=resistance]").textContent === ` + js(want))
	if !strings.HasPrefix(want, "49") && !strings.HasPrefix(want, "50") {
		t.Errorf("100 ft of 16 AWG have %s, the table says 499 mohm", want)
	}
	if got := eval[string](p, "location.hash"); !strings.HasPrefix(got, "#calculator-1?") || !strings.Contains(got, "length=100ft") {
		t.Errorf("the address reads %q", got)
	}
}

func TestCalculatorShowsVerdictFigureAndSummary(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "calculators/wire-drop.html")
	figure := eval[string](p, `document.querySelector(".answer svg").outerHTML`)
	if got := p.text(".verdict"); got == "" {
		t.Error("no verdict is there before the first touch")
	}
	p.fill("#calculator-1-current", "80")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "current=80A", "drop")))
	if got := eval[string](p, `document.querySelector(".verdict").dataset.verdict`); got == "ok" {
		t.Error("80 A through 16 AWG are said to be good")
	}
	p.wait(`document.querySelector(".sum").textContent.includes(document.querySelector("[data-output=drop]").textContent)`)
	if got := eval[string](p, `document.querySelector(".answer svg").outerHTML`); got == figure {
		t.Error("the figure stays as it was")
	}
	if got := p.text(".reasons"); got == "" {
		t.Error("no reason is given for the verdict")
	}
	if role := eval[string](p, `document.querySelector(".sum").getAttribute("role")`); role != "status" {
		t.Errorf("the summary line has the role %q, so no screen reader speaks it", role)
	}
}

func TestCalculatorUnits(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "calculators/wire-drop.html")
	p.fill("#calculator-1-wire", "2.5")
	p.choose("#calculator-1-wire-u", "mm2")
	want := answer(t, "wire-drop", "wire=2.5mm2", "drop")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(want))
	// A unit typed behind the number counts, whatever the choice beside it says.
	p.fill("#calculator-1-length", "12 ft")
	want = answer(t, "wire-drop", "wire=2.5mm2&length=12ft", "drop")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(want))
	// A decimal comma is a decimal point: some keypads have nothing else.
	p.fill("#calculator-1-length", "4,5")
	want = answer(t, "wire-drop", "wire=2.5mm2&length=4.5m", "drop")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(want))
}

func TestCalculatorWrongInput(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "calculators/wire-drop.html")
	p.fill("#calculator-1-length", "5")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "length=5m", "drop")))
	old := p.text("[data-output=drop]")
	p.fill("#calculator-1-length", "-3")
	p.wait(`document.querySelector("#calculator-1-length-e").textContent !== ""`)
	if got := p.text("#calculator-1-length-e"); !strings.Contains(got, "60") {
		t.Errorf("the error %q does not say what is accepted", got)
	}
	if eval[string](p, `document.querySelector("#calculator-1-length").getAttribute("aria-invalid")`) != "true" {
		t.Error("the field is not marked")
	}
	if gap := eval[float64](p, `document.querySelector("#calculator-1-length-e").getBoundingClientRect().top - document.querySelector("#calculator-1-length").getBoundingClientRect().bottom`); gap < 0 || gap > 40 {
		t.Errorf("the error stands %.0f px below its field", gap)
	}
	if got := p.text("[data-output=drop]"); got != old {
		t.Errorf("the old result %s became %s", old, got)
	}
	if !eval[bool](p, `document.querySelector(".answer").dataset.stale !== undefined`) {
		t.Error("the old result is not marked as old")
	}
	p.wait(`document.querySelector(".sum").textContent.startsWith("Not computed")`)
	p.fill("#calculator-1-length", "3")
	p.wait(`document.querySelector(".answer").dataset.stale === undefined && document.querySelector("#calculator-1-length-e").textContent === ""`)
	p.fill("#calculator-1-length", "")
	p.wait(`document.querySelector("#calculator-1-length-e").textContent !== ""`)
}

func TestCalculatorAddressRestores(t *testing.T) {
	t.Parallel()
	site := serve(t, shipped(t), "/").root
	p := newTab(t)
	p.open(site + "calculators/wire-drop.html#calculator-1?current=9A&length=12ft&wire=2.5mm2")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "current=9A&length=12ft&wire=2.5mm2", "drop")))
	if p.value("#calculator-1-length") != "12" || p.value("#calculator-1-length-u") != "ft" || p.value("#calculator-1-wire-u") != "mm2" {
		t.Error("the fields do not show the address")
	}
	p.fill("#calculator-1-current", "7")
	p.wait(`location.hash.includes("current=7A")`)
	shared := eval[string](p, "location.href")
	other := newTab(t)
	other.open(shared)
	other.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "current=7A&length=12ft&wire=2.5mm2", "drop")))
}

func TestValueOpensItsCalculator(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	words := p.text("a.value[href*=spare], a.value[href*=fuse-tap]")
	p.tap("a.value[href*=fuse-tap]")
	p.wait(`document.body.dataset.kind === "calculator" && document.querySelector(".sum")`)
	p.wait(`document.querySelector(".answer").textContent.includes(` + js(words) + `)`)
}

func TestCalculatorInSheet(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "power/fuse-tap.html")
	p.fill(".step .calculator [name=existing]", "13")
	p.wait(`document.querySelector(".step .calculator .verdict").dataset.verdict === "stop"`)
	p.key(kb.Tab) // the keyboard goes on through units and fields
	p.wait(`document.activeElement.closest(".step .calculator")`)
}
