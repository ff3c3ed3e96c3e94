package browsertest

import (
	"os"
	"strings"
	"testing"

	"baybook/calculators/calctest"

	"github.com/chromedp/cdproto/emulation"
)

// axeFile is the accessibility engine that npm ci brings into theme/.
const axeFile = "../../theme/node_modules/axe-core/axe.min.js"

// pageKinds is one page of each kind that the book has.
var pageKinds = []string{
	"index.html", "ground/ground-point.html", "reference/wire-sizes.html", "jobs/bookmobile.html", "book/hazard-register.html",
	"calculators.html", "calculators/wire-drop.html", "a-z.html", "study.html", "record.html", "sign-off.html", "rules.html",
}

// TestNoBarrier runs axe-core, by the rules of WCAG 2.2 A and AA and its own
// good practice, over each kind of page in each way in which colours may be
// shown.
func TestNoBarrier(t *testing.T) {
	t.Parallel()
	engine, err := os.ReadFile(axeFile)
	if err != nil {
		calctest.Missing(t, "axe-core is not there; run npm ci in theme/")
	}
	root := serve(t, shipped(t), "/").root
	for _, look := range []struct{ name, feature, value string }{
		{"light", "prefers-color-scheme", "light"}, {"dark", "prefers-color-scheme", "dark"}, {"forced colours", "forced-colors", "active"},
	} {
		for _, kind := range pageKinds {
			t.Run(look.name+"/"+kind, func(t *testing.T) {
				t.Parallel()
				p := newTab(t)
				call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
					Features: []*emulation.MediaFeature{{Name: look.feature, Value: look.value}},
				})
				p.open(root + kind)
				for _, barrier := range barriers(p, string(engine)) {
					t.Error(barrier)
				}
			})
		}
	}
}

// barriers lists what axe-core finds in the page as it stands.
func barriers(p *tab, engine string) []string {
	p.t.Helper()
	p.do(engine)
	// What is not yet laid out has no colours to judge.
	const run = `axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]}).then((r) => r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + v.help + ": " + n.target.join(" ") + ": " + n.html.slice(0, 160))))`
	return eval[[]string](p, run)
}

// TestEngineFindsABarrier keeps the test above from passing for want of an
// engine.
func TestEngineFindsABarrier(t *testing.T) {
	t.Parallel()
	engine, err := os.ReadFile(axeFile)
	if err != nil {
		calctest.Missing(t, "axe-core is not there; run npm ci in theme/")
	}
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "index.html")
	p.do(`document.querySelector("main").insertAdjacentHTML("beforeend", "<img src='icons/book.svg'>")`)
	if found := strings.Join(barriers(p, string(engine)), "\n"); !strings.Contains(found, "image-alt") {
		t.Errorf("a picture without words passes: %s", found)
	}
}
