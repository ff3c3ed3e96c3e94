package browsertest

import (
	"context"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/andybalholm/brotli"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp/kb"
)

// A barred script comes only once a test lets it.
type barred struct{ open chan struct{} }

// bar keeps a script from coming; its name holds part. The service worker,
// which fetches all files, would take the leave of a page: it does not come.
func bar(s *shelf, part string) *barred {
	b := &barred{open: make(chan struct{}, 100)}
	gate := func(reader context.Context, name string) bool {
		if name == "worker.js" {
			return false
		}
		if strings.Contains(name, part) {
			select {
			case _, ok := <-b.open:
				if ok && reader.Err() != nil {
					b.letIn() // the page that asked is gone: the leave is another's
				}
			case <-reader.Done():
			}
		}
		return true
	}
	s.gate.Store(&gate)
	return b
}

// letIn lets it come once.
func (b *barred) letIn() { b.open <- struct{}{} }

// What is done to a page before its second script is in is done once it is:
// nothing is lost, and a tick is kept at once.
func TestTouchedBeforeTheScriptIsIn(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.allowed = []string{"404"}
	call(p, network.SetCacheDisabled, network.SetCacheDisabledParams{CacheDisabled: true})
	s := serve(t, shipped(t), "/shop/book/")
	interactive := bar(s, "assets/interactive.")
	t.Cleanup(func() { close(interactive.open) })
	p.open(s.root + "calculators/wire-drop.html")
	p.fill("#calculator-1-current", "12")
	interactive.letIn()
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "current=12A", "drop")))

	p.open(s.root + "power/fuse-tap.html")
	p.tap("#step-1 .tick")
	if !eval[bool](p, `document.querySelector("#step-1 .tick").checked`) {
		t.Error("a tick waits for the script")
	}
	interactive.letIn()
	p.reload()
	p.wait(`document.querySelector("#step-1 .tick").checked`)
	p.fill("#reading-feed-contact input", "11.2")
	interactive.letIn()
	p.wait(verdictOf("feed-contact") + ` === "stop"`)
	if got := p.value("#reading-feed-contact input"); got != "11.2" {
		t.Errorf("what was typed became %q", got)
	}
	p.reload()
	p.tap("[data-do=steps]")
	p.key(kb.ArrowRight)
	interactive.letIn()
	p.wait(current + ` === "step-1"`)
	interactive.letIn()
	p.reload() // goes on by itself where one was
	p.wait(current + ` === "step-1"`)
	p.key(kb.Escape)

	p.open(s.root + "ground/ground-point.html")
	p.fill("#find", "gnd")
	interactive.letIn()
	p.wait(`document.querySelector(".hits a")`)
	p.open(s.root + "passage/new-hole.html")
	p.fill(".practice .try input", "1e9")
	p.key(kb.Enter)
	interactive.letIn()
	p.wait(`document.querySelector(".practice .marking").textContent !== ""`)
	if got := eval[string](p, "location.search"); got != "" {
		t.Errorf("a form that waits for its script was sent off as %q", got)
	}
}

// A second script that does not come is told of once it is missed, and asked
// for again at the next touch.
func TestScriptThatDoesNotCome(t *testing.T) {
	t.Parallel()
	p := newTab(t)
	p.allowed = []string{"404", "MIME type"}
	s := serve(t, shipped(t), "/")
	refuse := func(_ context.Context, name string) bool { return !strings.Contains(name, "assets/interactive.") }
	s.gate.Store(&refuse)
	p.open(s.root + "calculators/wire-drop.html")
	p.fill("#calculator-1-current", "12")
	p.wait(`document.querySelector(".storage[role=alert]")?.textContent.includes("cannot answer now")`)
	s.gate.Store(nil)
	p.fill("#calculator-1-current", "13")
	p.wait(`document.querySelector("[data-output=drop]").textContent === ` + js(answer(t, "wire-drop", "current=13A", "drop")))
	p.wait(`!document.querySelector(".storage")`)
}

// Nothing moves when the scripts come, be it after the page has been seen
// (cumulative layout shift, as browsers measure it).
func TestNothingMovesWhenScriptsCome(t *testing.T) {
	t.Parallel()
	s := serve(t, shipped(t), "/")
	const pause = 400 * time.Millisecond // time enough for a page to be painted
	gate := func(_ context.Context, name string) bool {
		if strings.HasSuffix(name, ".js") {
			time.Sleep(pause)
		}
		return true
	}
	s.gate.Store(&gate)
	seen := 0
	for _, screen := range []size{phone, {1280, 900}} {
		p := newTab(t)
		p.resize(screen)
		beforeScripts(p, `window.shifts = []; new PerformanceObserver((l) => { for (const e of l.getEntries()) shifts.push({by: e.value, what: (e.sources ?? []).map((s) => (s.node?.outerHTML ?? s.node?.textContent ?? "?").slice(0, 80)).join(", ")}); }).observe({type: "layout-shift", buffered: true});`)
		for _, page := range []string{"index.html", "power/fuse-tap.html", "jobs/bookmobile.html", "calculators/wire-drop.html", "reference/wire-sizes.html", "study.html", "record.html"} {
			p.open(s.root + page)
			p.wait(`document.documentElement.dataset.live !== undefined && document.querySelector("script[src*='/interactive.']")`)
			got := eval[struct {
				Painted bool
				By      float64
				What    []string
			}](p, `(async () => {
				await new Promise((done) => setTimeout(done, 900));
				const painted = performance.getEntriesByType("paint").some((e) => e.name === "first-contentful-paint" && e.startTime < performance.getEntriesByType("resource").find((r) => r.name.includes("/page.")).responseEnd);
				return {painted, by: shifts.reduce((sum, e) => sum + e.by, 0), what: shifts.map((e) => e.what)};
			})()`)
			if got.Painted {
				seen++
			}
			if got.By > 0.01 {
				t.Errorf("%s, %d pixels wide, moves by %.3f when its scripts come: %v", page, screen.width, got.By, got.What)
			}
		}
	}
	if seen == 0 {
		t.Error("no page was painted before its scripts came: the test looks at nothing")
	}
}

// What must come over the air before a sheet can be read and ticked is small:
// page, style and first script without the drawings, as brotli packs them.
// 14 KiB are what a server sends in its first flight (RFC 6928: ten segments).
func TestFirstFlight(t *testing.T) {
	t.Parallel()
	const firstFlight, most = 14 << 10, 30 << 10
	dir := shipped(t)
	packed := func(data []byte) int {
		var n counter
		w := brotli.NewWriterLevel(&n, brotli.BestCompression)
		if _, err := w.Write(data); err != nil {
			t.Fatal(err)
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
		return int(n)
	}
	drawing := regexp.MustCompile(`(?s)<svg.*?</svg>`)
	needed := regexp.MustCompile(`<script defer src="([^"]+)"|<link rel="stylesheet" href="([^"]+)"`)
	files := make(map[string]int)
	var sizes []int
	for _, name := range everyPage(t) {
		page, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(page), ` data-sheet="`) {
			continue
		}
		sum := packed(drawing.ReplaceAll(page, nil))
		found := needed.FindAllStringSubmatch(string(page), -1)
		if len(found) != 2 {
			t.Errorf("%s wants %d files before it is read, not a script and a style", name, len(found))
		}
		for _, f := range found {
			file := filepath.Join(dir, filepath.Dir(name), f[1]+f[2])
			if files[file] == 0 {
				data, err := os.ReadFile(file)
				if err != nil {
					t.Fatal(err)
				}
				files[file] = packed(data)
			}
			sum += files[file]
		}
		if sum > most {
			t.Errorf("%s takes %d bytes before it can be read, more than %d", name, sum, most)
		}
		sizes = append(sizes, sum)
	}
	slices.Sort(sizes)
	if len(sizes) < 40 || sizes[len(sizes)/2] > firstFlight {
		t.Errorf("of %d sheets half take more than a first flight: %v", len(sizes), sizes)
	}
	t.Logf("%d sheets take %d, %d, %d bytes: least, half, most", len(sizes), sizes[0], sizes[len(sizes)/2], sizes[len(sizes)-1])
}

// counter counts what is written.
type counter int

func (c *counter) Write(data []byte) (int, error) {
	*c += counter(len(data))
	return len(data), nil
}
