package browsertest

import (
	"slices"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// BenchmarkReach reports, on a phone of 360 by 740 pixels, how far a sheet's
// first step lies from the top of its page, as the median over all sheets with
// steps in screens, and the share of steps of a few long sheets whose screen in
// the step view holds messages and sentence whole.
func BenchmarkReach(b *testing.B) {
	p := newTab(b)
	root := serve(b, shipped(b), "/").root
	var screens []float64
	pages := sheetsWith(b, p, root, ".step")
	for b.Loop() {
		screens = screens[:0]
		for _, page := range pages {
			p.open(root + page)
			screens = append(screens, eval[float64](p, `document.querySelector(".step").getBoundingClientRect().top / innerHeight`))
		}
	}
	slices.Sort(screens)
	fit, steps := 0, 0
	for _, page := range pages[:min(len(pages), 6)] {
		p.open(root + page)
		p.tap("[data-do=steps]")
		p.wait(current)
		for _, s := range eval[[]stepScreen](p, walkSteps) {
			if s.Sentence && (s.Messages == 0 || s.Whole) {
				fit++
			}
			steps++
		}
		p.key(kb.Escape)
	}
	b.ReportMetric(screens[len(screens)/2], "screens-to-step-1")
	b.ReportMetric(100*float64(fit)/float64(steps), "%steps-that-fit")
}
