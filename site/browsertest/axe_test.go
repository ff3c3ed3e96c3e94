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
	"index.html", "ground/ground-point.html", "reference/wire-sizes.html", "jobs/bookmobile.html", "jobs/bookmobile-quote.html", "news.html", "issues.html", "book/hazard-register.html",
	"calculators.html", "calculators/wire-drop.html", "a-z.html", "study.html", "record.html", "before.html", "places.html", "sign-off.html", "rules.html",
}

// A look is one way in which colors may be shown.
type look struct{ name, feature, value string }

// looks begins with the one in which everything is judged.
var looks = []look{
	{"light", "prefers-color-scheme", "light"}, {"dark", "prefers-color-scheme", "dark"}, {"forced colors", "forced-colors", "active"},
}

// Rules of axe-core, by tag or by name: those of WCAG 2.2 A and AA with its own
// good practice, and those of them whose answer depends on the colors shown.
const (
	allRules   = `["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]`
	colorRules = `["color-contrast", "link-in-text-block"]`
)

// TestNoBarrier runs axe-core over each kind of page.
func TestNoBarrier(t *testing.T) {
	t.Parallel()
	engine := axe(t)
	root := serve(t, shipped(t), "/").root
	for _, kind := range pageKinds {
		t.Run(kind, func(t *testing.T) {
			t.Parallel()
			p := newTab(t)
			p.open(root + kind)
			noBarrier(p, engine)
		})
	}
}

// axe reads the accessibility engine.
func axe(t testing.TB) string {
	t.Helper()
	engine, err := os.ReadFile(axeFile)
	if err != nil {
		calctest.Missing(t, "axe-core is not there; run npm ci in theme/")
	}
	return string(engine)
}

// noBarrier judges the page as it stands by all rules, and then in each other
// look by the rules that have to do with color: structure, names and order do
// not change with it.
func noBarrier(p *tab, engine string) {
	p.t.Helper()
	rules := allRules
	for _, l := range looks {
		call(p, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: l.feature, Value: l.value}, {Name: "prefers-reduced-motion", Value: "reduce"}},
		})
		for _, barrier := range barriers(p, engine, rules) {
			p.t.Errorf("%s: %s", l.name, barrier)
		}
		rules = colorRules
	}
}

// barriers lists what axe-core finds by the rules in the page as it stands.
func barriers(p *tab, engine, rules string) []string {
	p.t.Helper()
	p.do("if (!window.axe) {" + engine + "}")
	run := `axe.run(document, {runOnly: ` + rules + `}).then((r) => r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + v.help + ": " + n.target.join(" ") + ": " + n.html.slice(0, 160))))`
	return eval[[]string](p, run)
}

// TestEngineFindsABarrier keeps the tests above from passing for want of an
// engine or of a look.
func TestEngineFindsABarrier(t *testing.T) {
	t.Parallel()
	engine := axe(t)
	p := newTab(t)
	p.open(serve(t, shipped(t), "/").root + "index.html")
	p.do(`document.querySelector("main").insertAdjacentHTML("beforeend", "<img src='icons/book.svg'><p class='faint'>Hardly seen</p>");
		const sheet = new CSSStyleSheet();
		sheet.replaceSync(".faint { background: #fff; color: #eee } @media (prefers-color-scheme: dark) { .faint { background: #000; color: #222 } }");
		document.adoptedStyleSheets.push(sheet)`)
	if found := strings.Join(barriers(p, engine, allRules), "\n"); !strings.Contains(found, "image-alt") || !strings.Contains(found, "faint") {
		t.Errorf("a picture without words or faint letters pass: %s", found)
	}
	prefer(p, "prefers-color-scheme", "dark")
	if found := strings.Join(barriers(p, engine, colorRules), "\n"); !strings.Contains(found, "faint") {
		t.Errorf("faint letters pass in the dark: %s", found)
	}
}
